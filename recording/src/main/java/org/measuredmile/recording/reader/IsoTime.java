package org.measuredmile.recording.reader;

import java.time.Year;

/// The common form of a date with a time, read from a buffer without an object: `2031-05-04T10:15:30.25Z`.
///
/// Shape: `T` or a blank between the two; `Z`, an offset like `+02:00`, or nothing behind. Whatever has another form is
/// for [TimeText#dateTime], with which this agrees on all that it reads. Unit: nanoseconds since 1970, UTC where the
/// text says so, else as if it were.
/// Source: ISO 8601-1:2019, 5.4.2; days of the Gregorian calendar counted from 1 March of year 0.
final class IsoTime {
    /// What is not of this form, or no time.
    static final long OTHER_FORM = Long.MIN_VALUE;

    private static final long SECOND_NS = 1_000_000_000L;
    private static final int LONGEST = 48;
    private static final int NS_DIGITS = 9;
    /// What the last of so many decimals of a second is worth.
    private static final long[] NS_OF_LAST = {
        SECOND_NS, 100_000_000, 10_000_000, 1_000_000, 100_000, 10_000, 1_000, 100, 10, 1
    };
    private static final int[] MONTH_DAYS = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

    private IsoTime() {}

    /// The time that stands between two places of a buffer; [#OTHER_FORM] where it is no time of this form.
    static long ns(char[] text, int from, int to) {
        if (to - from < 19 || to - from > LONGEST || !hasMarks(text, from)) {
            return OTHER_FORM;
        }
        int century = two(text, from);
        int ofCentury = two(text, from + 2);
        int year = century * 100 + ofCentury;
        int month = two(text, from + 5);
        int day = two(text, from + 8);
        int clockEnd = clockEnd(text, from + 11, to);
        long offsetS = offsetS(text, clockEnd, to);
        long clockNs = clockNs(text, from + 11, clockEnd);
        boolean read = century >= 0 && ofCentury >= 0 && clockNs != OTHER_FORM && offsetS != OTHER_FORM;
        return read && isDate(year, month, day)
                ? (epochDay(year, month, day) * 86_400 - offsetS) * SECOND_NS + clockNs
                : OTHER_FORM;
    }

    /// Where the zone begins, or the text ends without one.
    private static int clockEnd(char[] text, int from, int to) {
        if (text[to - 1] == 'Z') {
            return to - 1;
        }
        boolean isOffset = to - 6 > from && (text[to - 6] == '+' || text[to - 6] == '-');
        return isOffset ? to - 6 : to;
    }

    /// The time of day `10:15:30.25` that stands between two places of a buffer, in nanoseconds; a leap second
    /// is let in. [#OTHER_FORM] where it is no time of this form.
    static long clockNs(char[] text, int from, int to) {
        if (to - from < 8 || to - from > LONGEST || text[from + 2] != ':' || text[from + 5] != ':') {
            return OTHER_FORM;
        }
        int hour = two(text, from);
        int minute = two(text, from + 3);
        int second = two(text, from + 6);
        if (hour < 0 || hour > 23 || minute < 0 || minute > 59 || second < 0 || second > 60) {
            return OTHER_FORM;
        }
        long clockNs = (hour * 3600L + minute * 60L + second) * SECOND_NS;
        return to - from == 8 ? clockNs : withDecimals(clockNs, text, from + 8, to);
    }

    private static long withDecimals(long clockNs, char[] text, int from, int to) {
        if ((text[from] != '.' && text[from] != ',') || to - from < 2) {
            return OTHER_FORM;
        }
        long decimals = 0;
        for (int at = from + 1; at < to; at++) {
            char digit = (char) (text[at] - '0');
            if (digit > 9) {
                return OTHER_FORM;
            }
            // What is finer than a nanosecond is cut off.
            decimals = at - from <= NS_DIGITS ? decimals * 10 + digit : decimals;
        }
        return clockNs + decimals * NS_OF_LAST[Math.min(to - from - 1, NS_DIGITS)];
    }

    private static boolean hasMarks(char[] text, int from) {
        char gap = text[from + 10];
        return text[from + 4] == '-'
                && text[from + 7] == '-'
                && (gap == 'T' || gap == ' ')
                && text[from + 13] == ':'
                && text[from + 16] == ':';
    }

    /// Two digits; below 0 where they are none.
    private static int two(char[] text, int at) {
        int tens = text[at] - '0';
        int ones = text[at + 1] - '0';
        return tens < 0 || tens > 9 || ones < 0 || ones > 9 ? -1 : tens * 10 + ones;
    }

    private static boolean isDate(int year, int month, int day) {
        if (year < 1970 || year > 2200 || month < 1 || month > 12 || day < 1) {
            return false;
        }
        return day <= MONTH_DAYS[month - 1] + (month == 2 && Year.isLeap(year) ? 1 : 0);
    }

    private static long epochDay(int year, int month, int day) {
        int monthFromMarch = month > 2 ? month - 3 : month + 9;
        int yearFromMarch = month > 2 ? year : year - 1;
        int dayOfYear = (153 * monthFromMarch + 2) / 5 + day - 1;
        return 365L * yearFromMarch
                + yearFromMarch / 4
                - yearFromMarch / 100
                + yearFromMarch / 400
                + dayOfYear
                - 719_468;
    }

    private static long offsetS(char[] text, int at, int to) {
        if (at == to || (at + 1 == to && text[at] == 'Z')) {
            return 0;
        }
        if (to - at != 6 || (text[at] != '+' && text[at] != '-') || text[at + 3] != ':') {
            return OTHER_FORM;
        }
        int hours = two(text, at + 1);
        int minutes = two(text, at + 4);
        if (hours < 0 || hours > 18 || minutes < 0 || minutes > 59) {
            return OTHER_FORM;
        }
        long size = hours * 3600L + minutes * 60L;
        return text[at] == '-' ? -size : size;
    }
}
