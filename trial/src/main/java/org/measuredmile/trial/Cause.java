package org.measuredmile.trial;

/// A cause for which a run of the trial is void, chosen at the track before its result is shown.
public record Cause(String code, String words) {}
