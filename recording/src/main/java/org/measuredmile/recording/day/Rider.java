package org.measuredmile.recording.day;

import java.util.OptionalDouble;

/// A rider by code, never by name, with the mass as ridden (rider, clothing and gear).
///
/// Unit: kilograms.
public record Rider(String code, OptionalDouble massAsRiddenKg) {}
