package org.measuredmile.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.Dimension;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.UnitText;
import org.measuredmile.recording.ColumnMeaning.Role;

/// What a person set a column of an instrument's tables to mean.
///
/// Shape: `role` is CLOCK, VALUE or LEFT_OUT; `kind` counts for values; `unit` is one of [#units], or empty where the
/// file is to say it. In a file without a head the columns are called `column 1`, `column 2` and so on.
public record ColumnSetting(String name, Role role, ChannelKind kind, String unit) {
    /// Degrees and minutes in one number, as `4904.2530` for 49° 4.253′.
    public static final String DEGREES_MINUTES = "ddmm.mmmm";

    private static final String DEGREES = "°";

    /// The words that a meaning can be set to.
    public static List<String> meanings() {
        List<String> words = new ArrayList<>();
        words.add(Role.CLOCK.id());
        Arrays.stream(ChannelKind.values()).map(ChannelKind::id).forEach(words::add);
        words.add(Role.LEFT_OUT.id());
        return words;
    }

    /// The units that a meaning can have, the SI unit first; none where its numbers need none.
    public static List<String> units(String meaning) {
        if (meaning.equals(Role.CLOCK.id())) {
            return symbols(QuantityKind.TIME);
        }
        return kind(meaning).map(ColumnSetting::units).orElse(List.of());
    }

    private static List<String> units(ChannelKind kind) {
        return switch (kind) {
            case LATITUDE, LONGITUDE -> List.of(DEGREES, DEGREES_MINUTES);
            case COURSE, SATELLITES, DILUTION_OF_PRECISION, LEVER, OTHER -> List.of();
            default -> symbols(kind.quantity());
        };
    }

    private static List<String> symbols(QuantityKind quantity) {
        Dimension dimension = quantity.si().dimension();
        List<String> symbols = new ArrayList<>();
        symbols.add(quantity.si().symbol());
        Arrays.stream(Unit.values())
                .filter(unit -> unit.dimension() == dimension && unit != quantity.si())
                .forEach(unit -> symbols.add(unit.symbol()));
        symbols.removeIf(String::isEmpty);
        return symbols;
    }

    /// The setting that words make; empty where a word is none of [#meanings] or the unit none of [#units].
    public static Optional<ColumnSetting> of(String name, String meaning, String unit) {
        Optional<String> known = unitOf(meaning, unit);
        if (known.isEmpty() || name.isBlank() || !meanings().contains(meaning)) {
            return Optional.empty();
        }
        Role role = meaning.equals(Role.CLOCK.id())
                ? Role.CLOCK
                : meaning.equals(Role.LEFT_OUT.id()) ? Role.LEFT_OUT : Role.VALUE;
        ChannelKind kind = kind(meaning).orElse(ChannelKind.OTHER);
        return Optional.of(new ColumnSetting(name.strip(), role, kind, known.get()));
    }

    /// A unit in the spelling that is kept; an empty one stays empty.
    private static Optional<String> unitOf(String meaning, String unit) {
        List<String> allowed = units(meaning);
        if (unit.isEmpty() || allowed.contains(unit)) {
            return Optional.of(unit);
        }
        QuantityKind quantity = meaning.equals(Role.CLOCK.id())
                ? QuantityKind.TIME
                : kind(meaning).map(ChannelKind::quantity).orElse(QuantityKind.RATIO);
        return UnitText.find(unit, quantity).map(Unit::symbol).filter(allowed::contains);
    }

    private static Optional<ChannelKind> kind(String id) {
        return Arrays.stream(ChannelKind.values())
                .filter(kind -> kind.id().equals(id))
                .findFirst();
    }

    /// The word that was set.
    public String meaning() {
        return role == Role.VALUE ? kind.id() : role.id();
    }

    /// The unit that its numbers are in; empty where the file is to say it, or where it is a form of degrees.
    public Optional<Unit> numbersIn() {
        QuantityKind quantity = role == Role.CLOCK ? QuantityKind.TIME : kind.quantity();
        boolean isForm = unit.isEmpty() || kind == ChannelKind.LATITUDE || kind == ChannelKind.LONGITUDE;
        return isForm ? Optional.empty() : UnitText.find(unit, quantity);
    }

    /// One phrase for a list: `spd → wheel-speed in km/h`.
    public String phrase() {
        return name + " → " + meaning() + (unit.isEmpty() ? "" : " in " + unit);
    }
}
