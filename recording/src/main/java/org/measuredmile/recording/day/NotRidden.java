package org.measuredmile.recording.day;

/// A trial, or a variant of one, that was not ridden, and why: a fact that is printed with the results.
public record NotRidden(String trial, Variant variant, String reason) {}
