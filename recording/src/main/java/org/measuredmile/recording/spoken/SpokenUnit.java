package org.measuredmile.recording.spoken;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.UnitText;

/// Finds the unit that words after a number name: "miles an hour", "feet", "watt hours".
final class SpokenUnit {
    private static final int LONGEST = 3;

    /// The kinds in which a unit is looked for, those said most first: a spelling of two meanings has the first.
    private static final List<QuantityKind> KINDS = List.of(
            QuantityKind.SPEED,
            QuantityKind.LENGTH,
            QuantityKind.TIME,
            QuantityKind.MASS,
            QuantityKind.POWER,
            QuantityKind.ENERGY,
            QuantityKind.ENERGY_PER_DISTANCE,
            QuantityKind.PRESSURE,
            QuantityKind.TEMPERATURE,
            QuantityKind.ACCELERATION,
            QuantityKind.FORCE,
            QuantityKind.VOLTAGE,
            QuantityKind.CURRENT,
            QuantityKind.CHARGE,
            QuantityKind.ILLUMINANCE,
            QuantityKind.SOUND_LEVEL,
            QuantityKind.ANGLE,
            QuantityKind.FREQUENCY,
            QuantityKind.RATIO);

    /// Short spellings that in a sentence are something else: "15 in the wind", "3 a day", "the 2 K model".
    private static final Set<String> OTHER_WORDS =
            Set.of("in", "a", "k", "t", "c", "f", "n", "j", "st", "b", "as", "us");

    private static final Set<String> NAMES_OF_SCALES = Set.of("celsius", "fahrenheit");

    private SpokenUnit() {}

    /// A unit as text, its kind, and where the words after it begin.
    record Said(String spelling, Unit unit, QuantityKind kind, int end) {}

    /// The longest unit that begins with a word; nothing when none does.
    static Optional<Said> at(List<SpokenWord> words, int start) {
        for (int length = LONGEST; length > 0; length--) {
            if (isOnePhrase(words, start, length)) {
                String spelling = spelling(words, start, length);
                for (QuantityKind kind : KINDS) {
                    Optional<Unit> unit =
                            OTHER_WORDS.contains(spelling) ? Optional.empty() : UnitText.find(spelling, kind);
                    if (unit.isPresent()) {
                        return Optional.of(new Said(spelling, unit.get(), named(kind, unit.get()), start + length));
                    }
                }
            }
        }
        return Optional.empty();
    }

    private static QuantityKind named(QuantityKind kind, Unit unit) {
        boolean road = unit == Unit.MILE || unit == Unit.KILOMETRE || unit == Unit.NAUTICAL_MILE;
        return road ? QuantityKind.DISTANCE : kind;
    }

    private static boolean isOnePhrase(List<SpokenWord> words, int start, int length) {
        if (start + length > words.size()) {
            return false;
        }
        for (int i = start; i < start + length; i++) {
            if (words.get(i).before() != SpokenWord.Gap.NONE) {
                return false;
            }
        }
        return true;
    }

    /// One form for what is said in several: "mile an hour", "kilometers a second".
    private static String spelling(List<SpokenWord> words, int start, int length) {
        List<String> said = new ArrayList<>();
        words.subList(start, start + length).forEach(one -> said.add(one.word()));
        if (length == LONGEST && Set.of("a", "an", "per").contains(said.get(1))) {
            said.set(1, "per");
            String first = said.getFirst();
            String many = first.equals("foot") ? "feet" : first + "s";
            said.set(0, first.endsWith("s") || first.equals("feet") ? first : many);
        }
        if (said.size() == 2 && said.getFirst().startsWith("degree") && NAMES_OF_SCALES.contains(said.get(1))) {
            return said.get(1);
        }
        return String.join(" ", said);
    }
}
