package org.measuredmile.recording;

import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.Unit;

/// What a column of delimited text was taken for, and why, so that a person can see it and object.
///
/// Shape: `kind` is that of the channel it becomes; `unit` is the one that its numbers were taken to be in, empty where
/// the numbers are kept as they are; `because` is a short reason in words; `first` are its first few
/// values as they are written.
public record ColumnMeaning(
        int index,
        String name,
        Role role,
        ChannelKind kind,
        Optional<Unit> unit,
        String writtenUnit,
        String because,
        List<String> first) {
    public ColumnMeaning {
        first = List.copyOf(first);
    }

    /// What a column is for.
    public enum Role {
        /// A time of day, a date, a time stamp, or seconds from a start.
        CLOCK("time"),
        /// A number that becomes a channel.
        VALUE("value"),
        /// The letter N, S, E or W for the column before it.
        HEMISPHERE("hemisphere"),
        /// Words, which a channel cannot hold.
        WORDS("words"),
        /// Nothing stands in it.
        EMPTY("nothing"),
        /// A person said that it means nothing here.
        LEFT_OUT("none");

        private final String id;

        Role(String id) {
            this.id = id;
        }

        /// The word used in files and on pages.
        public String id() {
            return id;
        }
    }

    public ColumnMeaning as(Role other, String why) {
        return new ColumnMeaning(index, name, other, ChannelKind.OTHER, Optional.empty(), writtenUnit, why, first);
    }

    public ColumnMeaning as(ChannelKind other, Optional<Unit> newUnit, String why) {
        return new ColumnMeaning(index, name, role, other, newUnit, writtenUnit, why, first);
    }

    /// The same column with the unit of its numbers and why.
    public ColumnMeaning in(Optional<Unit> newUnit, String why) {
        return new ColumnMeaning(index, name, role, kind, newUnit, writtenUnit, why, first);
    }

    /// The same column, its numbers in a form that is no unit.
    public ColumnMeaning inForm(String form, String why) {
        return new ColumnMeaning(index, name, role, kind, unit, form, why, first);
    }

    /// One word for it: the id of the channel's kind, or that of the role of a column that becomes none.
    public String meaning() {
        return role == Role.VALUE ? kind.id() : role.id();
    }

    /// The unit as it is printed: that of its numbers, or as written where they are kept as they are.
    public String unitText() {
        return unit.map(Unit::symbol).orElse(writtenUnit);
    }

    /// One phrase for a list: `speed → speed in km/h (said in the head)`.
    public String phrase() {
        String in = unit.map(Unit::symbol)
                .filter(symbol -> !symbol.isEmpty())
                .map(symbol -> " in " + symbol)
                .orElse("");
        return name + " → " + meaning() + in + (because.isEmpty() ? "" : " (" + because + ")");
    }
}
