package org.measuredmile.recording.day;

/// A member of the crew by code, with the part they had that day.
public record CrewMember(String code, String role) {}
