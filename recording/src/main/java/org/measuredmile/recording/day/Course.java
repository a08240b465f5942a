package org.measuredmile.recording.day;

import java.time.LocalDate;
import java.util.Optional;

/// A surveyed piece of road.
///
/// Unit: metres; degrees of WGS-84; bearings in degrees from true north.
/// Shape: `profile` is the name of the file that `heights` were read from; a file that could not be used leaves none.
public record Course(
        String id,
        String kind,
        Optional<Surveyed> length,
        Optional<Surveyed> rise,
        Optional<Gate> start,
        Optional<Gate> finish,
        String profile,
        Optional<LocalDate> surveyedOn,
        String surveyedBy,
        CourseHeights heights) {
    /// A course that nobody levelled along its way.
    public Course(
            String id,
            String kind,
            Optional<Surveyed> length,
            Optional<Surveyed> rise,
            Optional<Gate> start,
            Optional<Gate> finish,
            String profile,
            Optional<LocalDate> surveyedOn,
            String surveyedBy) {
        this(id, kind, length, rise, start, finish, profile, surveyedOn, surveyedBy, CourseHeights.NONE);
    }

    /// The same with its profile.
    public Course withHeights(CourseHeights levelled) {
        return new Course(id, kind, length, rise, start, finish, profile, surveyedOn, surveyedBy, levelled);
    }

    /// A surveyed length with its standard uncertainty.
    public record Surveyed(double valueM, double standardUncertaintyM) {}

    /// A line across the road.
    public record Gate(double latitudeDegrees, double longitudeDegrees, double bearingDegrees) {}
}
