package org.measuredmile.recording.day;

import java.time.LocalDate;
import java.util.Optional;

/// A surveyed piece of road.
///
/// Unit: metres; degrees of WGS-84; bearings in degrees from true north.
public record Course(
        String id,
        String kind,
        Optional<Surveyed> length,
        Optional<Surveyed> rise,
        Optional<Gate> start,
        Optional<Gate> finish,
        String profile,
        Optional<LocalDate> surveyedOn,
        String surveyedBy) {
    /// A surveyed length with its standard uncertainty.
    public record Surveyed(double valueM, double standardUncertaintyM) {}

    /// A line across the road.
    public record Gate(double latitudeDegrees, double longitudeDegrees, double bearingDegrees) {}
}
