package org.measuredmile.recording.reader;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/// Reads latitudes and longitudes as instruments write them: degrees, degrees and minutes, or all three parts, with
/// signs or letters.
///
/// `49.0709`, `49.0709N`, `49° 04.253' N`, `N 49 04 15.2`, `49°04'15.2"N`, and `4904.253` where the column is known to
/// hold degrees and minutes in one number.
/// Source: ISO 6709:2022 for the parts and the letters; their spellings are common practice, no source.
final class CoordinateText {
    private static final String NUMBER = "(\\d++(?:[.,]\\d++)?+)";
    private static final Pattern FORM = Pattern.compile("([NSEW])?\\s*+([-+]?)" + NUMBER
            + "(?:\\s*+[°ºd:]\\s*+|\\s++)?+(?:" + NUMBER + "(?:\\s*+['′’m:]\\s*+|\\s++)?+"
            + "(?:" + NUMBER + "\\s*+(?:\"|″|”|''|s)?+)?+)?+\\s*+([NSEW])?");
    private static final Pattern PADDED = Pattern.compile("[-+]?0\\d{3,4}[.,]\\d+[NSEW]?");
    private static final int LONGEST = 64;

    private CoordinateText() {}

    /// A coordinate in degrees; NaN where the text is none. A letter of the south or the west turns the sign.
    static double degrees(String text) {
        if (NumberText.isPlain(text, '.')) {
            return NumberText.parse(text).orElse(Double.NaN);
        }
        Matcher parts = FORM.matcher(text.strip());
        if (text.length() > LONGEST || !parts.matches() || (parts.group(1) != null && parts.group(6) != null)) {
            return Double.NaN;
        }
        double degrees = part(parts.group(3));
        double minutes = part(parts.group(4));
        double seconds = part(parts.group(5));
        boolean hasFractionTooEarly = (parts.group(4) != null && degrees != Math.rint(degrees))
                || (parts.group(5) != null && minutes != Math.rint(minutes));
        if (hasFractionTooEarly || minutes >= 60 || seconds >= 60) {
            return Double.NaN;
        }
        double size = degrees + (minutes + seconds / 60) / 60;
        String letter = parts.group(1) != null ? parts.group(1) : parts.group(6);
        boolean negative = parts.group(2).equals("-") != ("S".equals(letter) || "W".equals(letter));
        return negative ? -size : size;
    }

    private static double part(@org.jspecify.annotations.Nullable String number) {
        return number == null ? 0 : Double.parseDouble(number.replace(',', '.'));
    }

    /// Degrees of `dddmm.mmmm`; NaN where its minutes are none.
    static double ofDegreesMinutes(double written) {
        double size = Math.abs(written);
        double whole = Math.floor(size / 100);
        double minutes = size - whole * 100;
        double degrees = minutes < 60 ? whole + minutes / 60 : Double.NaN;
        return written < 0 ? -degrees : degrees;
    }

    /// Whether plain numbers can be degrees and minutes in one.
    static boolean canBeDegreesMinutes(List<String> cells, double limit) {
        return cells.stream().allMatch(cell -> {
            double degrees = ofDegreesMinutes(degrees(cell));
            return Math.abs(degrees) <= limit && !cell.contains("°");
        });
    }

    private static boolean isPadded(String cell) {
        int first = !cell.isEmpty() && (cell.charAt(0) == '-' || cell.charAt(0) == '+') ? 1 : 0;
        return cell.startsWith("0", first)
                && !cell.startsWith("0.", first)
                && PADDED.matcher(cell).matches();
    }

    /// Whether plain numbers must be degrees and minutes in one: beyond the globe as degrees, or padded with
    /// zeros as no degrees are.
    static boolean mustBeDegreesMinutes(List<String> cells, double limit) {
        boolean beyond = cells.stream().anyMatch(cell -> Math.abs(degrees(cell)) > limit || isPadded(cell));
        return beyond && canBeDegreesMinutes(cells, limit);
    }
}
