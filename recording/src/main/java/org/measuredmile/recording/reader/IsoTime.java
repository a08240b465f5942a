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
    private static final int[] MONTH_DAYS = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

    private IsoTime() {}

    /// The time that stands between two places of a buffer; [#OTHER_FORM] where it is no time of this form.
    static long ns(char[] text, int from, int to) {
        if (to - from < 19 || to - from > LONGEST || !hasMarks(text, from)) {
            return OTHER_FORM;
        }
        int year = two(text, from) * 100 + two(text, from + 2);
        int month = two(text, from + 5);
        int day = two(text, from + 8);
        int hour = two(text, from + 11);
        int minute = two(text, from + 14);
        int second = two(text, from + 17);
        boolean read = two(text, from) >= 0 && two(text, from + 2) >= 0 && hour >= 0 && minute >= 0 && second >= 0;
        if (!read || !isDate(year, month, day) || hour > 23 || minute > 59 || second > 60) {
            return OTHER_FORM;
        }
        int at = from + 19;
        long decimalsNs = 0;
        if (at < to && (text[at] == '.' || text[at] == ',')) {
            int first = ++at;
            long unitNs = SECOND_NS;
            for (; at < to && text[at] >= '0' && text[at] <= '9'; at++) {
                unitNs /= 10;
                decimalsNs += (text[at] - '0') * unitNs;
            }
            if (at == first) {
                return OTHER_FORM;
            }
        }
        long offsetS = offsetS(text, at, to);
        long seconds = epochDay(year, month, day) * 86_400 + hour * 3600L + minute * 60L + second - offsetS;
        return offsetS == OTHER_FORM ? OTHER_FORM : seconds * SECOND_NS + decimalsNs;
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
