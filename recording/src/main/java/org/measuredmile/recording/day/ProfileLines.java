package org.measuredmile.recording.day;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.CourseHeights.Point;

/// Reads the file that a course names as its profile: distance and height, one levelled place a line.
final class ProfileLines {
    /// A height for which nobody wrote how well it is known, m.
    private static final double HEIGHT_SD_M = 0.1;
    /// No road that is ridden is steeper, rise over the way along it.
    private static final double STEEPEST = 0.5;
    /// How far a profile's end may lie from the surveyed length, relative.
    private static final double OTHER_LENGTH = 0.02;

    private final List<Point> points = new ArrayList<>();

    private ProfileLines() {}

    /// A course with its profile, where it names one and that can be used.
    static Course read(Course course, Place named, Map<String, byte[]> texts, Faults faults) {
        if (course.profile().isEmpty()) {
            return course;
        }
        String file = DayFiles.COURSES + course.profile();
        byte[] bytes = texts.get(file);
        if (bytes == null) {
            faults.add(
                    DayFault.PROFILE_MISSING,
                    named,
                    Faults.quoted(course.id()),
                    Faults.quoted(file),
                    Faults.quoted(file));
            return course;
        }
        return FileText.of(file, bytes, "profile", faults)
                .flatMap(text -> CsvTable.read(text, DayFiles.PROFILE_COLUMNS, List.of("distance", "height"), faults))
                .map(table -> new ProfileLines().heights(table, course, faults))
                .map(course::withHeights)
                .orElse(course);
    }

    private CourseHeights heights(CsvTable table, Course course, Faults faults) {
        for (CsvTable.Row row : table.rows()) {
            point(new Cells(table, row, faults)).ifPresent(points::add);
        }
        var end = Place.in(table.file());
        if (points.size() < 2) {
            faults.add(DayFault.PROFILE_TOO_SHORT, end, points.size());
            return CourseHeights.NONE;
        }
        double lastM = points.getLast().distanceM();
        double surveyedM = course.length().map(Course.Surveyed::valueM).orElse(lastM);
        if (Math.abs(lastM - surveyedM) > OTHER_LENGTH * surveyedM) {
            faults.add(DayFault.PROFILE_OTHER_LENGTH, end, ExactText.number(lastM), ExactText.number(surveyedM));
            return CourseHeights.NONE;
        }
        return new CourseHeights(points);
    }

    /// A line's place; nothing where it cannot be used, so that the road is taken to be straight across it.
    private Optional<Point> point(Cells cells) {
        OptionalDouble distance = metres(cells, "distance");
        OptionalDouble height = metres(cells, "height");
        OptionalDouble sd = metres(cells, "standard-uncertainty");
        for (String column : List.of("distance", "height")) {
            cells.needed(column, "metres, as 12.5");
        }
        if (distance.isEmpty() || height.isEmpty()) {
            return Optional.empty();
        }
        if (sd.isPresent() && sd.getAsDouble() < 0) {
            cells.add(DayFault.PROFILE_NEGATIVE, "standard-uncertainty");
            return Optional.empty();
        }
        double distanceM = distance.getAsDouble();
        double heightM = height.getAsDouble();
        if (points.isEmpty() ? distanceM != 0 : distanceM <= points.getLast().distanceM()) {
            cells.add(DayFault.PROFILE_NOT_ONWARD, "distance", cells.text("distance"));
            return Optional.empty();
        }
        if (!points.isEmpty()) {
            var before = points.getLast();
            if (Math.abs(heightM - before.heightM()) > STEEPEST * (distanceM - before.distanceM())) {
                cells.add(DayFault.PROFILE_TOO_STEEP, "height", cells.text("height"));
                return Optional.empty();
            }
        }
        return Optional.of(new Point(distanceM, heightM, sd.orElse(HEIGHT_SD_M)));
    }

    private static OptionalDouble metres(Cells cells, String column) {
        return FieldText.quantity(cells.text(column), QuantityKind.LENGTH, Optional.of(Unit.METRE), cells.at(column));
    }
}
