package org.measuredmile.comparison.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.measuredmile.comparison.spec.ClaimText.Claimed;
import org.measuredmile.comparison.spec.Wanted;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.Air;
import org.measuredmile.trial.RoadSetting;

/// The conditions of a claimed range: what the claim states, and what stands in where it is silent.
///
/// Shape: `level` holds what the figure's variant must have, nothing where the claim names no level; `strange`
/// the conditions that the model knows nothing of, as written. Speed and rider's power are empty where the
/// claim states none.
/// Unit: kilograms with gear, kelvin, metres per second, watts.
/// Source: house values; the reference conditions of the handbook, and for "up to" the lightest rider of
/// [#LIGHTEST_KG] in air of [#WARM_K].
record RangeConditions(
        Variant level,
        boolean isLevelNamed,
        double riderKg,
        double airK,
        boolean isTemperatureStated,
        double windMps,
        OptionalDouble speedMps,
        OptionalDouble riderW,
        List<String> strange) {
    static final double LIGHTEST_KG = 60;
    static final double WARM_K = 303.15;

    private static final Pattern BAND = Pattern.compile("(.+?)\\s*(?:-|–|\\bto\\b)\\s*(.+)");
    private static final List<String> CALM = List.of("none", "no", "0", "calm");
    private static final List<String> FLAT = List.of("flat", "level", "none", "0", "0 %");
    private static final List<String> LEVEL_WORDS = List.of("lowest", "highest", "middle", "throttle", "off");

    RangeConditions {
        strange = List.copyOf(strange);
    }

    static RangeConditions of(Claimed claim) {
        return new Reader(claim).read();
    }

    /// A level as people call it: `the lowest level`, `level 3`, `full throttle`.
    static String levelWords(Variant level) {
        String role = level.get("levelRole").orElse("");
        String number = level.get("level").orElse("");
        return switch (role) {
            case "throttle" -> "full throttle";
            case "lowest", "highest" -> "the " + role + " level" + (number.isEmpty() ? "" : " (" + number + ")");
            default -> number.isEmpty() ? "a middle level" : "level " + number;
        };
    }

    /// Density of the air at the reference pressure and humidity, in kg/m³.
    double airKgPerM3() {
        return new Air(airK, Air.REFERENCE.pressurePa(), Air.REFERENCE.relativeHumidity()).densityKgPerM3();
    }

    private static final class Reader {
        private final Map<String, String> stated;
        private final boolean isBest;
        private final List<String> strange = new ArrayList<>();
        private Variant level = Variant.NONE;
        private OptionalDouble riderKg = OptionalDouble.empty();
        private OptionalDouble airK = OptionalDouble.empty();
        private OptionalDouble windMps = OptionalDouble.empty();
        private OptionalDouble speedMps = OptionalDouble.empty();
        private OptionalDouble riderW = OptionalDouble.empty();

        Reader(Claimed claim) {
            stated = claim.conditions();
            isBest = claim.wanted() instanceof Wanted.UpTo;
        }

        RangeConditions read() {
            stated.forEach(this::take);
            return new RangeConditions(
                    level,
                    !level.equals(Variant.NONE),
                    riderKg.orElse(isBest ? LIGHTEST_KG : RoadSetting.REFERENCE_RIDER_KG),
                    airK.orElse(isBest ? WARM_K : Air.REFERENCE.temperatureK()),
                    airK.isPresent(),
                    windMps.orElse(0),
                    speedMps,
                    riderW,
                    strange);
        }

        private void take(String key, String value) {
            boolean isTaken = switch (key) {
                case "level", "drive" -> level(value);
                case "rider-mass" -> (riderKg = mass(value)).isPresent();
                case "temperature" ->
                    (airK = quantity(value, QuantityKind.TEMPERATURE)).isPresent()
                            && airK.getAsDouble() > 230
                            && airK.getAsDouble() < 330;
                case "wind" ->
                    (windMps = CALM.contains(value) ? OptionalDouble.of(0) : quantity(value, QuantityKind.SPEED))
                            .isPresent();
                case "speed" -> (speedMps = quantity(value, QuantityKind.SPEED)).orElse(0) > 1;
                case "rider-power" -> (riderW = quantity(value, QuantityKind.POWER)).isPresent();
                case "grade", "road", "course" -> FLAT.contains(value);
                default -> key.equals(Claims.TOLERANCE);
            };
            if (!isTaken) {
                strange.add(key + "=" + value);
            }
        }

        private boolean level(String value) {
            boolean isNumber = value.matches("\\d{1,2}");
            boolean isKnown = isNumber || LEVEL_WORDS.contains(value);
            if (isKnown) {
                level = isNumber ? Variant.of("level", value) : Variant.of("levelRole", value);
            }
            return isKnown || value.equals("pedal");
        }

        /// A mass, or of a band the lighter end for "up to" and the heavier one for what must always hold.
        private OptionalDouble mass(String value) {
            var single = quantity(value, QuantityKind.MASS);
            var band = BAND.matcher(value);
            if (single.isPresent() || !band.matches()) {
                return single;
            }
            var high = QuantityText.parse(band.group(2), QuantityKind.MASS);
            if (!(high instanceof Parsed.Value upper)) {
                return OptionalDouble.empty();
            }
            return QuantityText.parse(band.group(1), QuantityKind.MASS, upper.unit()) instanceof Parsed.Value lower
                    ? OptionalDouble.of(isBest ? lower.si() : upper.si())
                    : OptionalDouble.empty();
        }

        private static OptionalDouble quantity(String value, QuantityKind kind) {
            return QuantityText.parse(value, kind) instanceof Parsed.Value read
                    ? OptionalDouble.of(read.si())
                    : OptionalDouble.empty();
        }
    }
}
