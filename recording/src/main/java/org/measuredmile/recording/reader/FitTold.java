package org.measuredmile.recording.reader;

import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;

/// What is told of a FIT file as a whole, each with its code, its weight and what to do.
enum FitTold {
    NOT_FIT("not-fit", Finding.Level.REFUSED, "copy the file from the instrument again"),
    NOT_AN_ACTIVITY(
            "not-an-activity",
            Finding.Level.REFUSED,
            "take the file of the ride: instruments keep activities in a folder of their own"),
    NO_SAMPLES("no-samples", Finding.Level.REFUSED, "take the file of the ride itself, and copy it again"),
    NO_TIMES("no-times", Finding.Level.REFUSED, "export the recording with times"),
    CUT_OFF("cut-off", Finding.Level.WARNING, "copy the file from the instrument again"),
    UNREADABLE("unreadable-inside", Finding.Level.WARNING, "copy the file from the instrument again"),
    NOT_CLOSED("not-closed", Finding.Level.WARNING, "end the recording before switching the instrument off"),
    HEADER_CHECKSUM("wrong-header-checksum", Finding.Level.WARNING, "copy the file from the instrument again"),
    FILE_CHECKSUM(
            "wrong-file-checksum",
            Finding.Level.WARNING,
            "copy the file from the instrument again; single values in it may be wrong"),
    TRAILING("trailing-bytes", Finding.Level.NOTE, ""),
    CHAINED("several-parts", Finding.Level.NOTE, ""),
    SESSIONS("several-sports", Finding.Level.NOTE, ""),
    UNUSUAL_TYPE("unusual-file-type", Finding.Level.WARNING, "take the instrument's own file of the ride"),
    CLOCK_NOT_SET(
            "clock-not-set", Finding.Level.WARNING, "set the instrument's clock; times in the recording are its own"),
    CLOCK_SET_MIDWAY("clock-set-midway", Finding.Level.WARNING, "wait until the instrument knows the time"),
    CLOCK_BY_MESSAGE("clock-by-message", Finding.Level.NOTE, ""),
    LOCAL_TIME("local-time", Finding.Level.NOTE, ""),
    NOT_TAKEN("messages-not-taken", Finding.Level.NOTE, ""),
    FIELDS_NOT_TAKEN("fields-not-taken", Finding.Level.NOTE, ""),
    UNKNOWN_FIELDS("unknown-fields", Finding.Level.NOTE, ""),
    NOT_CALIBRATED("not-calibrated", Finding.Level.WARNING, "calibrate the sensor, or take it from another file"),
    SPEED_SOURCE("speed-source-unclear", Finding.Level.NOTE, ""),
    BATTERY_OF_WHAT("battery-of-what", Finding.Level.NOTE, "");

    private final String code;
    private final Finding.Level level;
    private final String remedy;

    FitTold(String code, Finding.Level level, String remedy) {
        this.code = code;
        this.level = level;
        this.remedy = remedy;
    }

    String code() {
        return code;
    }

    String remedy() {
        return remedy;
    }

    Finding at(Place place, String message) {
        return new Finding(code, level, place, message, remedy);
    }

    /// The same as the reason why there is no recording.
    Decoding refuse(Remarks remarks, Place place, String message) {
        return remarks.refuse(code, place, message, remedy);
    }
}
