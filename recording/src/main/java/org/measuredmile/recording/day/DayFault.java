package org.measuredmile.recording.day;

import java.util.Locale;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;

/// Everything that can be noticed in the files that people write: one constant a kind, with its words.
///
/// Shape: [#code()] is the constant's name in lower case with hyphens and never changes meaning; `%s` stands for what
/// was found. A note changes nothing; a warning leaves out the value, line or file at its place and keeps all else; a
/// refusal means that no test day comes of the folder.
public enum DayFault {
    FILE_EMPTY(Finding.Level.WARNING, "the file holds nothing", "write its first line, or take the file away"),
    FILE_TOO_LARGE(
            Finding.Level.WARNING,
            "%s bytes; at most %s are read; the file is left out",
            "split it, or look what it is"),
    NOT_UTF_8(
            Finding.Level.WARNING,
            "the byte %s is not UTF-8; the file is left out",
            "save the file as UTF-8 with the editor or spreadsheet that wrote it"),
    BYTE_ORDER_MARK(Finding.Level.NOTE, "begins with a byte-order mark; it is passed over", ""),
    READ_AS_UTF_16(Finding.Level.NOTE, "is written in %s; read as that", ""),
    FORMAT_NEWER(
            Finding.Level.WARNING,
            "says that it is version %s of its format; it is read as version 1",
            "read it with a newer edition of this program"),
    FORMAT_OTHER(
            Finding.Level.WARNING,
            "says that it holds \"%s\"; \"%s\" is expected here; it is read as that",
            "check the name of the file and its first line"),
    FILE_UNKNOWN(Finding.Level.NOTE, "is none of a test day's files; it is kept and not read", ""),

    CELLS_BY(Finding.Level.NOTE, "cells are separated by %s; read so", ""),
    DECIMAL_COMMA(Finding.Level.NOTE, "decimal commas are read as decimal points", ""),
    COLUMN_MISSING(
            Finding.Level.WARNING,
            "the column \"%s\" is missing; no line of the file can be used",
            "name the columns in the first line: %s"),
    COLUMN_TWICE(
            Finding.Level.WARNING, "two columns are called \"%s\"; the first is used", "give the second another name"),
    COLUMN_UNKNOWN(Finding.Level.NOTE, "not known here, kept as written: %s", ""),
    CELLS_TOO_MANY(
            Finding.Level.WARNING,
            "%s cells under %s columns; the line is left out",
            "put quotation marks around a cell that holds the separator"),
    QUOTE_BROKEN(
            Finding.Level.WARNING,
            "a quotation mark is not closed, or other signs follow it; the line is left out",
            "close it, and double it inside a quoted cell"),
    CELL_MISSING(Finding.Level.WARNING, "nothing is written; the line is left out", "write %s"),

    NOT_YAML(
            Finding.Level.WARNING,
            "is not YAML here: %s; the file is left out",
            "mend this line; indent with spaces only"),
    YAML_TOO_DEEP(Finding.Level.WARNING, "is nested deeper than %s levels; the file is left out", "write it flatter"),
    YAML_ALIASES(
            Finding.Level.WARNING, "uses aliases (*name); the file is left out", "write each value where it belongs"),
    NOT_A_MAPPING(Finding.Level.WARNING, "holds no keys with values; it is left out", "write key: value, one a line"),
    KEY_TWICE(Finding.Level.WARNING, "is written twice; the first is used", "take one of them away"),
    KEY_UNKNOWN(Finding.Level.NOTE, "not known here, kept as written: %s", ""),
    KEY_MISSING(Finding.Level.WARNING, "nothing is written; the entry is left out", "write %s"),
    NOT_ONE_VALUE(
            Finding.Level.WARNING, "one value is expected, a list or keys are written; left out", "write one value"),
    NOT_A_LIST(Finding.Level.WARNING, "a list is expected; left out", "begin each entry with a hyphen"),

    NOT_A_QUANTITY(Finding.Level.WARNING, "%s; left out", "%s"),
    OUT_OF_RANGE(Finding.Level.WARNING, "\"%s\" is not %s; left out", "check the number and its unit"),
    NOT_A_DATE(
            Finding.Level.WARNING,
            "\"%s\" is no date of the calendar; left out",
            "write year-month-day, as 2031-04-14"),
    NOT_A_TIME(
            Finding.Level.WARNING,
            "\"%s\" is no time; left out",
            "write 10:27:41 in the day's zone, or 2031-04-14T10:27:41+01:00"),
    TIME_SKIPPED(
            Finding.Level.WARNING,
            "\"%s\" did not exist on that date in %s, where clocks went forward; left out",
            "write the time with its offset from UTC"),
    TIME_TWICE(
            Finding.Level.WARNING,
            "\"%s\" came twice on that date in %s, where clocks went back; the first is taken",
            "write the time with its offset from UTC"),
    TIME_OF_OTHER_DAY(
            Finding.Level.WARNING, "\"%s\" lies on %s, the test day is %s; it is kept", "check the date or the offset"),
    NOT_A_WHOLE_NUMBER(
            Finding.Level.WARNING, "\"%s\" is no whole number from %s to %s; left out", "write digits alone"),
    NOT_A_FRAME_RATE(
            Finding.Level.WARNING,
            "\"%s\" is no frame rate; left out",
            "write frames a second, as 30000/1001 or 59.94, or variable"),
    FRAME_RATE_VARIABLE(
            Finding.Level.WARNING,
            "the frame rate is variable: no time can be told by its frames",
            "record with a steady rate where frames are to be counted"),
    NOT_ONE_OF(Finding.Level.WARNING, "\"%s\" is not one of %s; left out", "write one of them"),
    NOT_A_VARIANT(
            Finding.Level.WARNING,
            "\"%s\" is no list of key=value; the line is left out",
            "write drive=throttle level=3"),

    DAY_MISSING(Finding.Level.REFUSED, "there is no day.yaml", "write one with at least date, timeZone and bike"),
    DAY_UNREADABLE(Finding.Level.REFUSED, "nothing could be read from day.yaml", "mend what its other findings name"),
    DATE_MISSING(Finding.Level.REFUSED, "the test day has no date", "write date: 2031-04-14"),
    BIKE_MISSING(Finding.Level.REFUSED, "the test day names no bike", "write bike: and the bike's id or its folder"),
    BIKE_DIFFERS(
            Finding.Level.REFUSED,
            "day.yaml says bike \"%s\", its folder describes \"%s\"",
            "give the right folder, or mend one of the two"),
    BIKE_NOT_DESCRIBED(Finding.Level.NOTE, "no bike.yaml could be read; of the bike \"%s\" only the id is known", ""),
    ZONE_MISSING(
            Finding.Level.WARNING,
            "the time zone is not stated; times are read as UTC",
            "write timeZone: and its name, as Europe/London"),
    ZONE_UNKNOWN(
            Finding.Level.WARNING,
            "\"%s\" is no time zone; times are read as UTC",
            "write a name of the IANA list, as Europe/London"),
    ENTRY_TWICE(Finding.Level.WARNING, "\"%s\" is listed twice; the first is used", "give the second another name"),
    ID_WITH_BLANKS(
            Finding.Level.WARNING, "\"%s\" holds blanks or commas; the line is left out", "write one word, as b-03"),
    COURSE_NOT_DESCRIBED(
            Finding.Level.WARNING,
            "the course \"%s\" has no file courses/%s.yaml",
            "add it, or describe it in day.yaml"),
    PROFILE_MISSING(
            Finding.Level.WARNING,
            "the course \"%s\" names a profile, \"%s\" is not there; its slope is taken to be even",
            "add \"%s\", or take the key away"),
    PROFILE_NOT_ONWARD(
            Finding.Level.WARNING,
            "the distance %s does not go on from 0 or from the line before; the line is left out",
            "write distances from the first gate, 0 on the first line and each more than the one before"),
    PROFILE_TOO_STEEP(
            Finding.Level.WARNING,
            "the height %s makes a slope steeper than one in two; the line is left out",
            "look whether distance or height was misread, or is in another unit"),
    PROFILE_NEGATIVE(Finding.Level.WARNING, "a standard uncertainty below 0; the line is left out", "write 0 or more"),
    PROFILE_TOO_SHORT(
            Finding.Level.WARNING,
            "%s places that can be used; the slope is taken to be even",
            "write at least the heights at both gates"),
    PROFILE_OTHER_LENGTH(
            Finding.Level.WARNING,
            "ends at %s m, the course is %s m long; the slope is taken to be even",
            "survey the other of the two again, or name the profile of this course"),
    CHECK_BY_ONE(
            Finding.Level.WARNING,
            "\"%s\" made the pre-ride check and ticked it; it counts as not ticked",
            "let a second person look at the bike and tick it"),
    NOT_RIDDEN_WITHOUT_REASON(
            Finding.Level.WARNING, "no reason is written; the entry is kept", "write why it was not ridden"),

    RUN_TWICE(
            Finding.Level.WARNING,
            "the run \"%s\" stands on line %s already; this line is left out",
            "give it its own id"),
    RUN_UNKNOWN(Finding.Level.WARNING, "there is no run \"%s\" in runs.csv; %s", "mend the id, or add the run"),
    RUN_LEFT_OUT(
            Finding.Level.WARNING,
            "the line of the run \"%s\" in runs.csv could not be used; this line waits for it",
            "mend that line"),
    RIDER_UNKNOWN(
            Finding.Level.WARNING, "\"%s\" is no rider of day.yaml; the run is kept", "add the rider's code and mass"),
    COURSE_UNKNOWN(
            Finding.Level.WARNING, "\"%s\" is no course of the day; the run is kept", "add it to courses in day.yaml"),
    INSTRUMENT_UNKNOWN(
            Finding.Level.WARNING,
            "\"%s\" is no instrument of day.yaml; the line is kept",
            "add it to instruments with its kind and calibration"),
    STATE_MISSING(
            Finding.Level.WARNING,
            "the state is not written; the run is taken as proposed",
            "write confirmed, proposed or void"),
    STATE_UNKNOWN(
            Finding.Level.WARNING,
            "\"%s\" is no state; the run is taken as proposed",
            "write confirmed, proposed or void"),
    VOID_WITHOUT_REASON(
            Finding.Level.WARNING,
            "the run is void and no reason is written; it is kept as void",
            "write one of the trial's causes, or other: and your own words"),
    REASON_NOT_USED(Finding.Level.NOTE, "a reason is written for a run that is not void: \"%s\"", ""),
    NO_VALUE(Finding.Level.NOTE, "no value is written for \"%s\"; there is no such reading", ""),
    RECORDING_MISSING(
            Finding.Level.WARNING,
            "there is no file \"%s\" in recordings/; the entry is kept",
            "add the file, or say in the note that it was lost"),
    RECORDING_TWICE(Finding.Level.WARNING, "\"%s\" is listed twice; this line is left out", "join the two lines"),
    RUN_NAMED_TWICE(
            Finding.Level.WARNING,
            "the run \"%s\" is named twice for one file; the first is used",
            "take one of them away"),
    NOT_A_WINDOW(
            Finding.Level.WARNING,
            "\"%s\" gives no ends of a run; the run stays named without them",
            "write both in seconds of the file's own clock with a point, as b-03@12.40-31.75"),
    WINDOW_IMPOSSIBLE(
            Finding.Level.WARNING,
            "\"%s\" cannot be the ends of a run: %s; the run stays named without them",
            "write the earlier end first, in seconds from the file's first sample"),
    RECORDING_NOT_LISTED(Finding.Level.NOTE, "is not named in recordings.csv; it is looked at all the same", ""),

    BIKE_WITHOUT_NAME(
            Finding.Level.WARNING, "no bike is named; the line is left out", "write the bike's id or its name"),
    FIGURE_UNKNOWN(
            Finding.Level.WARNING,
            "\"%s\" is no figure known here; the line is left out",
            "write an id, as weighin.mass"),
    LEDGER_BLANK(Finding.Level.NOTE, "lines without a value, left out: %s (%s)", ""),
    LEDGER_DATE_INCOMPLETE(Finding.Level.NOTE, "\"%s\" has no day; it is taken as %s", "");

    private final Finding.Level level;
    private final String message;
    private final String remedy;

    DayFault(Finding.Level level, String message, String remedy) {
        this.level = level;
        this.message = message;
        this.remedy = remedy;
    }

    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public Finding.Level level() {
        return level;
    }

    /// The words, with `%s` where something found is put in.
    public String message() {
        return message;
    }

    /// What would mend it, with `%s` where something found is put in.
    public String remedy() {
        return remedy;
    }

    /// The finding at a place: what was found fills the message first, then the remedy.
    Finding at(Place place, Object... found) {
        int inMessage = message.split("%s", -1).length - 1;
        Object[] rest = java.util.Arrays.copyOfRange(found, Math.min(inMessage, found.length), found.length);
        return new Finding(code(), level, place, fill(message, found), fill(remedy, rest));
    }

    private static String fill(String words, Object[] found) {
        return words.contains("%s") ? String.format(Locale.ROOT, words, found) : words;
    }
}
