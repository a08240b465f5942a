package org.measuredmile.recording.reader;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.OptionalLong;

/// Reads dates and times as instruments write them, strictly: 31 February is no date.
///
/// Unit: nanoseconds since 1970 (UTC where the text says so, else as if it were), nanoseconds of the day, days since
/// 1970. Nothing here depends on a locale or a time zone.
/// Source: ISO 8601-1:2019 for the forms with a T; the others are what loggers write, common practice, no source.
final class TimeText {
    static final long DAY_NS = 86_400_000_000_000L;
    private static final long SECOND_NS = 1_000_000_000L;
    private static final long HOUR_NS = 3600 * SECOND_NS;
    private static final int LONGEST = 48;

    private TimeText() {}

    /// The order in which a date written with numbers only has its parts.
    enum DateOrder {
        YEAR_FIRST,
        MONTH_FIRST,
        DAY_FIRST
    }

    /// A date with a time of day, parted by `T` or blanks, with or without a zone.
    static OptionalLong dateTime(String text, DateOrder order) {
        String trimmed = text.strip();
        if (trimmed.length() > LONGEST) {
            return OptionalLong.empty();
        }
        long common = order == DateOrder.YEAR_FIRST
                ? IsoTime.ns(trimmed.toCharArray(), 0, trimmed.length())
                : IsoTime.OTHER_FORM;
        if (common != IsoTime.OTHER_FORM) {
            return OptionalLong.of(common);
        }
        int gap = gapAfterDate(trimmed);
        if (gap < 0) {
            return OptionalLong.empty();
        }
        OptionalLong day = date(trimmed.substring(0, gap), order);
        String rest = trimmed.substring(gap + 1).strip();
        int zone = zoneAt(rest);
        OptionalLong offsetNs = zone < 0 ? OptionalLong.of(0) : offset(rest.substring(zone));
        OptionalLong clock = clock(zone < 0 ? rest : rest.substring(0, zone).strip());
        if (day.isEmpty() || clock.isEmpty() || offsetNs.isEmpty()) {
            return OptionalLong.empty();
        }
        return OptionalLong.of(day.getAsLong() * DAY_NS + clock.getAsLong() - offsetNs.getAsLong());
    }

    /// Whether a date with a time says of which zone it is.
    static boolean statesZone(String text) {
        String trimmed = text.strip();
        int gap = trimmed.length() > LONGEST ? -1 : gapAfterDate(trimmed);
        return gap >= 0 && zoneAt(trimmed.substring(gap + 1)) >= 0;
    }

    private static int gapAfterDate(String text) {
        for (int i = 6; i < text.length(); i++) {
            char sign = text.charAt(i);
            if (sign == 'T' || sign == 't' || sign == ' ') {
                return i;
            }
        }
        return -1;
    }

    private static int zoneAt(String clock) {
        for (int i = 0; i < clock.length(); i++) {
            char sign = clock.charAt(i);
            if (sign == 'Z' || sign == 'z' || sign == '+' || sign == '-' || clock.startsWith("UTC", i)) {
                return i;
            }
        }
        return -1;
    }

    private static OptionalLong offset(String zone) {
        if (zone.equalsIgnoreCase("Z") || zone.equals("UTC")) {
            return OptionalLong.of(0);
        }
        String digits = zone.substring(1).replace(":", "");
        boolean signed = zone.charAt(0) == '+' || zone.charAt(0) == '-';
        if (!signed || !isDigits(digits) || (digits.length() != 2 && digits.length() != 4)) {
            return OptionalLong.empty();
        }
        long hours = number(digits, 0, 2);
        long minutes = digits.length() == 4 ? number(digits, 2, 4) : 0;
        if (hours > 18 || minutes > 59) {
            return OptionalLong.empty();
        }
        long ns = (hours * 3600 + minutes * 60) * SECOND_NS;
        return OptionalLong.of(zone.charAt(0) == '-' ? -ns : ns);
    }

    /// A date: parts with `-`, `/` or `.` between them, or six or eight digits without.
    static OptionalLong date(String text, DateOrder order) {
        String trimmed = text.strip();
        int first = markFrom(trimmed, 0);
        int second = first < 0 ? -1 : markFrom(trimmed, first + 1);
        if (second >= 0 && markFrom(trimmed, second + 1) < 0) {
            String one = trimmed.substring(0, first);
            String two = trimmed.substring(first + 1, second);
            String three = trimmed.substring(second + 1);
            boolean digits = isDigits(one) && isDigits(two) && isDigits(three);
            return !digits
                    ? OptionalLong.empty()
                    : one.length() == 4 ? day(one, two, three) : inOrder(one, two, three, order);
        }
        String digits = trimmed.length() == 5 || trimmed.length() == 7 ? "0" + trimmed : trimmed;
        if (!isDigits(digits)) {
            return OptionalLong.empty();
        }
        if (digits.length() == 8 && order == DateOrder.YEAR_FIRST) {
            return day(digits.substring(0, 4), digits.substring(4, 6), digits.substring(6));
        }
        if (digits.length() == 6 || digits.length() == 8) {
            return inOrder(digits.substring(0, 2), digits.substring(2, 4), digits.substring(4), order);
        }
        return OptionalLong.empty();
    }

    private static int markFrom(String date, int from) {
        for (int i = from; i < date.length(); i++) {
            char sign = date.charAt(i);
            if (sign == '-' || sign == '/' || sign == '.') {
                return i;
            }
        }
        return -1;
    }

    private static OptionalLong inOrder(String first, String second, String third, DateOrder order) {
        return switch (order) {
            case YEAR_FIRST -> day(first, second, third);
            case MONTH_FIRST -> day(third, first, second);
            case DAY_FIRST -> day(third, second, first);
        };
    }

    private static OptionalLong day(String yearText, String monthText, String dayText) {
        if (yearText.length() > 4 || monthText.length() > 2 || dayText.length() > 2) {
            return OptionalLong.empty();
        }
        int written = (int) number(yearText, 0, yearText.length());
        int year = yearText.length() == 4 ? written : fullYear(written);
        int month = (int) number(monthText, 0, monthText.length());
        int day = (int) number(dayText, 0, dayText.length());
        boolean exists = yearText.length() != 3
                && year >= 1970
                && year <= 2200
                && month >= 1
                && month <= 12
                && day >= 1
                && day <= YearMonth.of(year, month).lengthOfMonth();
        return exists ? OptionalLong.of(LocalDate.of(year, month, day).toEpochDay()) : OptionalLong.empty();
    }

    /// The year that two digits stand for: satellite time begins in 1980.
    static int fullYear(int twoDigits) {
        return twoDigits >= 80 ? 1900 + twoDigits : 2000 + twoDigits;
    }

    /// A time of day: `HH:mm`, `HH:mm:ss`, `HHmmss`, each with decimals, or `HHmmssSSS`; a leap second is let
    /// in. `AM` or `PM` may follow where hours go to twelve.
    static OptionalLong clock(String text) {
        String trimmed = text.strip();
        int length = trimmed.length();
        if (length > 4 && (trimmed.charAt(length - 1) == 'M' || trimmed.charAt(length - 1) == 'm')) {
            OptionalLong written = clockOfDay(trimmed.substring(0, length - 2).strip());
            return written.isEmpty() ? written : halfDay(written.getAsLong(), trimmed.charAt(length - 2));
        }
        return clockOfDay(trimmed);
    }

    private static OptionalLong halfDay(long ns, char half) {
        long hour = ns / HOUR_NS;
        if (hour < 1 || hour > 12 || "AaPp".indexOf(half) < 0) {
            return OptionalLong.empty();
        }
        long sinceTwelve = hour == 12 ? ns - 12 * HOUR_NS : ns;
        return OptionalLong.of(half == 'P' || half == 'p' ? sinceTwelve + 12 * HOUR_NS : sinceTwelve);
    }

    private static OptionalLong clockOfDay(String trimmed) {
        int point = Math.max(trimmed.indexOf('.'), trimmed.indexOf(','));
        String whole = point < 0 ? trimmed : trimmed.substring(0, point);
        String decimals = point < 0 ? "" : trimmed.substring(point + 1);
        if (!decimals.isEmpty() && !isDigits(decimals)) {
            return OptionalLong.empty();
        }
        if (whole.indexOf(':') > 0) {
            String[] parts = whole.split(":", -1);
            boolean plain = parts.length >= 2 && parts.length <= 3;
            for (String part : parts) {
                plain = plain && isDigits(part) && part.length() <= 2;
            }
            return plain
                    ? ofDay(parts[0], parts[1], parts.length == 3 ? parts[2] : "0", decimals)
                    : OptionalLong.empty();
        }
        return isDigits(whole) ? compact(whole, decimals) : OptionalLong.empty();
    }

    private static OptionalLong compact(String whole, String decimals) {
        if (whole.length() > 9 || (whole.length() > 6 && !decimals.isEmpty())) {
            return OptionalLong.empty();
        }
        int width = whole.length() > 6 ? 9 : 6;
        String padded = "0".repeat(width - whole.length()) + whole;
        return ofDay(
                padded.substring(0, 2),
                padded.substring(2, 4),
                padded.substring(4, 6),
                width == 9 ? padded.substring(6) : decimals);
    }

    private static OptionalLong ofDay(String hours, String minutes, String seconds, String decimals) {
        long h = number(hours, 0, hours.length());
        long m = number(minutes, 0, minutes.length());
        long s = number(seconds, 0, seconds.length());
        if (h > 23 || m > 59 || s > 60) {
            return OptionalLong.empty();
        }
        String nine = (decimals + "000000000").substring(0, 9);
        return OptionalLong.of((h * 3600 + m * 60 + s) * SECOND_NS + number(nine, 0, 9));
    }

    static boolean isDigits(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) < '0' || text.charAt(i) > '9') {
                return false;
            }
        }
        return !text.isEmpty();
    }

    private static long number(String digits, int from, int to) {
        long value = 0;
        for (int i = from; i < Math.min(to, from + 18); i++) {
            value = value * 10 + (digits.charAt(i) - '0');
        }
        return value;
    }
}
