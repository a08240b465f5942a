package org.measuredmile.recording.reader;

import java.util.Optional;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.ChannelKind;

/// What a column of delimited text was taken for, and why, so that a person can see it and object.
///
/// Shape: `kind` is that of the channel it becomes; `unit` is the one that its numbers were taken to be in, empty where
/// the numbers are kept as they are; `because` is a short reason in words.
public record ColumnMeaning(
        int index, String name, Role role, ChannelKind kind, Optional<Unit> unit, String writtenUnit, String because) {
    /// What a column is for.
    public enum Role {
        /// A time of day, a date, a time stamp, or seconds from a start.
        CLOCK,
        /// A number that becomes a channel.
        VALUE,
        /// The letter N, S, E or W for the column before it.
        HEMISPHERE,
        /// Words, which a channel cannot hold.
        WORDS,
        /// Nothing stands in it.
        EMPTY
    }

    ColumnMeaning as(Role other, String why) {
        return new ColumnMeaning(index, name, other, ChannelKind.OTHER, Optional.empty(), writtenUnit, why);
    }

    ColumnMeaning as(ChannelKind other, Optional<Unit> newUnit, String why) {
        return new ColumnMeaning(index, name, role, other, newUnit, writtenUnit, why);
    }

    /// One phrase for a list: `speed → speed in km/h (said in the head)`.
    public String phrase() {
        String what = switch (role) {
            case CLOCK -> "time";
            case HEMISPHERE -> "hemisphere";
            case WORDS -> "words";
            case EMPTY -> "nothing";
            case VALUE -> kind.id();
        };
        String in = unit.map(Unit::symbol)
                .filter(symbol -> !symbol.isEmpty())
                .map(symbol -> " in " + symbol)
                .orElse("");
        return name + " → " + what + in + (because.isEmpty() ? "" : " (" + because + ")");
    }
}
