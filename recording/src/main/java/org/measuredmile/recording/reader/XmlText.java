package org.measuredmile.recording.reader;

/// The text of one element, in a buffer that is used again for the next.
///
/// Numbers and times are read from the signs as they stand; a string is made only where one is asked for.
final class XmlText {
    private static final int LONGEST = 1024;

    private final char[] signs = new char[LONGEST];
    private int from;
    private int to;
    private boolean stripped;

    void clear() {
        from = 0;
        to = 0;
        stripped = false;
    }

    /// Adds a piece; what is over the longest text is left out.
    void add(char[] piece, int start, int length) {
        int kept = Math.min(length, LONGEST - to);
        System.arraycopy(piece, start, signs, to, kept);
        to += kept;
    }

    private void strip() {
        if (!stripped) {
            while (from < to && isBlank(signs[from])) {
                from++;
            }
            while (from < to && isBlank(signs[to - 1])) {
                to--;
            }
            stripped = true;
        }
    }

    private static boolean isBlank(char sign) {
        boolean visibleAscii = sign > ' ' && sign < 127;
        return !visibleAscii && Character.isWhitespace(sign);
    }

    boolean isEmpty() {
        strip();
        return from == to;
    }

    /// The number that the text is; NaN where it is none.
    double number() {
        strip();
        return NumberText.parse(signs, from, to, '.');
    }

    /// The time that the text is, as [IsoTime#ns] gives it.
    long usualTimeNs() {
        strip();
        return IsoTime.ns(signs, from, to);
    }

    /// Whether a time of the usual form says of which zone it is.
    boolean endsInZone() {
        strip();
        boolean zulu = to > from && signs[to - 1] == 'Z';
        return zulu || (to - from >= 25 && (signs[to - 6] == '+' || signs[to - 6] == '-'));
    }

    /// The text without blanks around it.
    @Override
    public String toString() {
        strip();
        return new String(signs, from, to - from);
    }
}
