package org.measuredmile.recording.reader;

import java.util.Locale;
import java.util.Set;
import org.measuredmile.recording.ChannelKind;

/// The numbers that instruments write where they have no value.
///
/// Source: largest value of an unsigned field of one or two bytes (255, 65535) as in the public FIT protocol's base
/// types; −1 for speed and course, and −9999 and −32768 for heights and levels, are common practice, no source.
final class NoDataMark {
    private static final Set<String> WORDS = Set.of("nan", "null", "none", "na", "n/a", "-", "--");

    private NoDataMark() {}

    /// Whether a cell says in words that there is no value.
    static boolean isWord(String cell) {
        return WORDS.contains(cell.toLowerCase(Locale.ROOT));
    }

    /// Whether a value, as written, is a mark for no data in a channel of this kind.
    static boolean is(ChannelKind kind, double written) {
        if (written == -9999 || written == 65_535) {
            return true;
        }
        return switch (kind) {
            case HEART_RATE, CADENCE -> written == 255 || written < 0;
            case SPEED, WHEEL_SPEED, COURSE, DISTANCE, WIND_SPEED -> written == -1;
            case ALTITUDE -> written == -32_768;
            default -> false;
        };
    }
}
