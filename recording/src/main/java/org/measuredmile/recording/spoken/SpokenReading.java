package org.measuredmile.recording.spoken;

import java.util.Optional;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;

/// A number that somebody said, as a candidate for a reading.
///
/// Shape: `unit` and `kind` are absent when no unit was said, and `value` is then the bare number; `text` holds the
/// words as the captions have them, `written` the same in digits, as a reading may be written.
/// Unit: `timeS` seconds from the clip's start at which the words begin, within their cue by the share of characters
/// before them; `value` in the SI unit of `kind`.
public record SpokenReading(
        double timeS,
        double value,
        Optional<Unit> unit,
        Optional<QuantityKind> kind,
        String text,
        String written,
        Confidence confidence) {
    /// How surely the words are this value.
    public enum Confidence {
        CLEAR("number and unit said"),
        /// As in "two fifty watts" or "one oh five".
        IN_PIECES("the number was said in pieces"),
        /// As in "about fifteen" or "fifteen to sixteen".
        HEDGED("said as about so much"),
        BARE("no unit said");

        private final String words;

        Confidence(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /// What was said as a person would type it: the number with its unit's symbol where there is one number,
    /// else as [#written].
    public String typed() {
        int blank = written.indexOf(' ');
        boolean isOneNumber = blank > 0
                && written.substring(0, blank).matches("-?[\\d.]+")
                && written.substring(blank).chars().noneMatch(Character::isDigit);
        return unit.isPresent() && isOneNumber
                ? written.substring(0, blank) + " " + unit.get().symbol()
                : written;
    }

    public boolean isSpeed() {
        return kind.filter(QuantityKind.SPEED::equals).isPresent();
    }
}
