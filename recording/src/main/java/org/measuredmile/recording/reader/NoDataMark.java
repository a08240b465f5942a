package org.measuredmile.recording.reader;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.measuredmile.recording.ChannelKind;

/// The numbers that instruments write where they have no value.
///
/// Source: largest value of an unsigned field of one or two bytes (255, 65535) as in the public FIT protocol's base
/// types; −1 for speed and course, and −9999 and −32768 for heights and levels, are common practice, no source.
final class NoDataMark {
    private static final Set<String> WORDS = Set.of("nan", "null", "none", "na", "n/a", "-", "--");

    private static final Map<ChannelKind, Marks> MARKS = Arrays.stream(ChannelKind.values())
            .collect(Collectors.toMap(
                    kind -> kind, NoDataMark::marks, (one, same) -> one, () -> new EnumMap<>(ChannelKind.class)));

    private NoDataMark() {}

    /// Whether a cell says in words that there is no value.
    static boolean isWord(String cell) {
        return cell.length() <= 4 && WORDS.contains(cell.toLowerCase(Locale.ROOT));
    }

    /// The marks of one kind of channel, for asking often.
    record Marks(double own, boolean belowZero) {
        /// Whether a value, as written, is a mark for no data.
        boolean hold(double written) {
            return written == -9999 || written == 65_535 || written == own || (belowZero && written < 0);
        }
    }

    static Marks of(ChannelKind kind) {
        return Objects.requireNonNull(MARKS.get(kind));
    }

    private static Marks marks(ChannelKind kind) {
        return switch (kind) {
            case HEART_RATE, CADENCE -> new Marks(255, true);
            case SPEED, WHEEL_SPEED, COURSE, DISTANCE, WIND_SPEED -> new Marks(-1, false);
            case ALTITUDE -> new Marks(-32_768, false);
            default -> new Marks(Double.NaN, false);
        };
    }

    /// Whether a value, as written, is a mark for no data in a channel of this kind.
    static boolean is(ChannelKind kind, double written) {
        return of(kind).hold(written);
    }
}
