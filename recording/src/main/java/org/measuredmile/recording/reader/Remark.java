package org.measuredmile.recording.reader;

import org.measuredmile.recording.Finding;

/// What a reader can notice about single samples, each counted over the file and told once.
///
/// Shape: in `message`, `{n}` stands for how many and `{first}` for what the first one looked like.
enum Remark {
    NO_TIME(
            "no-time",
            Finding.Level.WARNING,
            "{n} samples have no time; they count for the length of the track, not for anything in time",
            "record with times"),
    BAD_TIME(
            "bad-time",
            Finding.Level.WARNING,
            "{n} times cannot be read, the first is \"{first}\"; their samples were left out of all channels",
            "write times like 2031-05-04T10:15:30Z"),
    ZONE_NOT_STATED(
            "zone-not-stated",
            Finding.Level.WARNING,
            "times do not say of which zone they are; they were read as UTC",
            "state the instrument's clock offset in recordings.csv"),
    REPEATED_TIME(
            "repeated-time",
            Finding.Level.WARNING,
            "{n} samples have the same time as another one; the first of each was kept",
            ""),
    TIME_BACKWARDS(
            "time-backwards",
            Finding.Level.WARNING,
            "{n} samples go back in time and were left out",
            "look at the instrument's clock around the place named"),
    BLOCKS_REORDERED(
            "blocks-reordered",
            Finding.Level.WARNING,
            "{n} blocks stood out of order and were put in order of time",
            ""),
    LATE_SENTENCES("late-sentences", Finding.Level.NOTE, "{n} epochs were written late and put in order of time", ""),
    BAD_COORDINATES(
            "bad-coordinates",
            Finding.Level.WARNING,
            "{n} positions are not numbers within the globe, the first is \"{first}\"; they were left out",
            ""),
    ZERO_COORDINATES(
            "zero-coordinates",
            Finding.Level.WARNING,
            "{n} positions are exactly 0, 0: the instrument had no fix; they were left out and no distance comes of "
                    + "them",
            "wait for a fix before starting"),
    NOT_A_NUMBER(
            "not-a-number",
            Finding.Level.WARNING,
            "{n} values cannot be read as numbers, the first is \"{first}\"; they were left out",
            ""),
    NO_DATA_MARK(
            "no-data-mark",
            Finding.Level.NOTE,
            "{n} values are the instrument's marks for no data, the first is {first}; there is no sample there",
            ""),
    EMPTY_ELEVATION(
            "empty-elevation", Finding.Level.NOTE, "{n} points have an elevation that is empty or no number", ""),
    EMPTY_SEGMENT("empty-segment", Finding.Level.NOTE, "{n} segments hold no point", ""),
    WRONG_CHECKSUM(
            "wrong-checksum",
            Finding.Level.WARNING,
            "{n} sentences have a wrong checksum and were dropped",
            "look at the cable or the logger's memory"),
    NO_CHECKSUM("no-checksum", Finding.Level.NOTE, "{n} sentences have no checksum and were taken as they are", ""),
    UNREADABLE_LINE("unreadable-line", Finding.Level.WARNING, "{n} lines are no whole sentences and were dropped", ""),
    NO_FIX("no-fix", Finding.Level.NOTE, "{n} epochs say that there was no fix; they have no position", ""),
    DATE_UNKNOWN(
            "date-unknown",
            Finding.Level.WARNING,
            "no sentence gives a date; times are counted from the first sample",
            "log RMC or ZDA sentences as well"),
    SHORT_ROW("short-row", Finding.Level.NOTE, "{n} rows have another number of cells than the head", ""),
    TOO_LONG(
            "too-long",
            Finding.Level.WARNING,
            "the file holds more than can be kept at once; what came after this place was not read",
            "cut the recording into parts"),
    CUT_OFF(
            "cut-off",
            Finding.Level.WARNING,
            "the file ends in the middle: {first}; what came before was kept",
            "copy the file from the instrument again"),
    CUE_WITHOUT_WORDS("cue-without-words", Finding.Level.NOTE, "{n} cues hold no words and were passed over", ""),
    CUE_OUT_OF_ORDER(
            "cue-out-of-order",
            Finding.Level.NOTE,
            "{n} cues begin before the one above them; each keeps its own times",
            ""),
    OVERLAPPING_CUES(
            "overlapping-cues",
            Finding.Level.NOTE,
            "{n} cues begin while the one before is still shown; the time of their words is less sure",
            ""),
    REPEATED_WORDS(
            "repeated-words",
            Finding.Level.NOTE,
            "{n} cues show words of the cue before again, as rolling captions do; each word was kept once",
            ""),
    DAMAGED_CUES(
            "damaged-cues",
            Finding.Level.WARNING,
            "{n} more cues are damaged and were left out",
            "export the captions again"),
    ILL_FORMED(
            "ill-formed",
            Finding.Level.WARNING,
            "the XML breaks here: {first}; what came before was kept, what comes after was not read",
            "export the recording again, or mend the file at the place named"),
    BLANKS_FIRST(
            "blanks-first",
            Finding.Level.NOTE,
            "blanks stand before the XML, which the standard forbids; they were passed over",
            ""),
    SENSOR_ABSENT(
            "sensor-absent",
            Finding.Level.NOTE,
            "{n} points say that their sensor was absent; their cadence was left out",
            ""),
    DISTANCE_BACK(
            "distance-back",
            Finding.Level.WARNING,
            "{n} steps of the instrument's own distance go back, the first {first}",
            "compare with the track before using that distance"),
    HELD_VALUES(
            "held-values",
            Finding.Level.NOTE,
            "{n} rows repeat the satellite receiver's last epoch; its channels keep the first row of each epoch",
            "");

    private final String code;
    private final Finding.Level level;
    private final String message;
    private final String remedy;

    Remark(String code, Finding.Level level, String message, String remedy) {
        this.code = code;
        this.level = level;
        this.message = message;
        this.remedy = remedy;
    }

    String code() {
        return code;
    }

    Finding.Level level() {
        return level;
    }

    String message() {
        return message;
    }

    String remedy() {
        return remedy;
    }
}
