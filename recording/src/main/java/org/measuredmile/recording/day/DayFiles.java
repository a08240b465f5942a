package org.measuredmile.recording.day;

import java.util.List;

/// The names of a test day's files, their kinds and their columns.
final class DayFiles {
    static final String DAY = "day.yaml";
    static final String RUNS = "runs.csv";
    static final String READINGS = "readings.csv";
    static final String RECORDINGS = "recordings.csv";
    static final String BIKE = "bike/bike.yaml";
    static final String SPEC = "bike/spec.csv";
    static final String COURSES = "courses/";

    static final List<String> RUN_COLUMNS =
            List.of("run", "trial", "variant", "rider", "start", "course", "direction", "state", "reason", "note");
    static final List<String> READING_COLUMNS =
            List.of("run", "reading", "value", "unit", "instrument", "time", "by", "note");
    static final List<String> RECORDING_COLUMNS = List.of("file", "instrument", "runs", "clock-offset-s", "note");
    static final List<String> SPEC_COLUMNS =
            List.of("item", "claimed", "unit", "conditions", "source", "date", "seen", "photo", "note");

    static final List<String> PROFILE_COLUMNS = List.of("distance", "height", "standard-uncertainty");

    private DayFiles() {}

    static boolean isCourse(String file) {
        return file.startsWith(COURSES) && file.endsWith(".yaml");
    }

    static boolean isKnown(String file) {
        return List.of(DAY, RUNS, READINGS, RECORDINGS, BIKE, SPEC).contains(file) || isCourse(file);
    }
}
