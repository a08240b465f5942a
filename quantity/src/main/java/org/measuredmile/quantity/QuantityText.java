package org.measuredmile.quantity;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.measuredmile.quantity.DecimalText.Comma;
import org.measuredmile.quantity.DecimalText.Decimal;

/// Reads quantities as people type them and as files hold them: `22 ft 4 in`, `22'4"`, `6,81 m`, `1:08.3`, `62 lb
/// 6 oz`.
///
/// Shape: text in, a finite value in SI with its unit and the step it was written to, or a fault; nothing is
/// thrown for a text. A number without a unit is a fault unless a unit for bare numbers is given. A comma that
/// may be a decimal mark as well as a thousands mark is a fault (docs/decisions/0010-ambiguous-comma.md).
public final class QuantityText {
    private static final int LONGEST = 80;
    private static final Pattern WHOLE =
            Pattern.compile("(?<sign>[+-]?) *(?<number>" + DecimalText.PATTERN + ") *(?<rest>.*)");
    private static final Pattern PART =
            Pattern.compile("(?<number>" + DecimalText.PATTERN + ") *(?<unit>[\\p{L}'\"]*)[.,]? *");

    private final String text;
    private final QuantityKind kind;
    private final Optional<Unit> bare;
    private final Comma comma;

    private QuantityText(String text, QuantityKind kind, Optional<Unit> bare, Comma comma) {
        this.text = text;
        this.kind = kind;
        this.bare = bare;
        this.comma = comma;
    }

    /// The quantity that a text holds; a number without a unit is a fault, except for a count.
    public static Parsed parse(String text, QuantityKind kind) {
        Optional<Unit> bare = kind == QuantityKind.COUNT ? Optional.of(Unit.ONE) : Optional.empty();
        return new QuantityText(text, kind, bare, Comma.UNAMBIGUOUS).read();
    }

    /// The quantity that a text holds; a number without a unit is in the given one.
    ///
    /// Error: IllegalArgumentException when that unit is not one of the kind's.
    public static Parsed parse(String text, QuantityKind kind, Unit bare) {
        if (bare.dimension() != kind.si().dimension()) {
            throw new IllegalArgumentException(bare + " is not a unit of " + kind);
        }
        return new QuantityText(text, kind, Optional.of(bare), Comma.UNAMBIGUOUS).read();
    }

    /// The quantity in a text that follows this product's own way of printing: commas are thousands marks only.
    public static Parsed parsePrinted(String text, QuantityKind kind) {
        Optional<Unit> bare = kind == QuantityKind.COUNT ? Optional.of(Unit.ONE) : Optional.empty();
        return new QuantityText(text, kind, bare, Comma.THOUSANDS).read();
    }

    private Parsed read() {
        String plain = CharacterForms.plain(text).strip();
        if (kind == QuantityKind.WORD) {
            return fault("a word is no quantity", "read it as text");
        }
        if (plain.isEmpty()) {
            return fault("nothing is written", "write a number and its unit");
        }
        if (plain.length() > LONGEST) {
            return fault("the text is too long for a quantity", "write one number and its unit");
        }
        Matcher whole = WHOLE.matcher(plain);
        if (!whole.matches()) {
            return fault(quoted() + " does not begin with a number", "write a number and its unit, " + example());
        }
        boolean negative = whole.group("sign").equals("-");
        String magnitude = plain.substring(whole.start("number"));
        if (kind.si().dimension() == Dimension.TIME && magnitude.indexOf(':') > 0) {
            return ClockText.read(magnitude, negative);
        }
        return switch (DecimalText.read(whole.group("number"), comma)) {
            case DecimalText.Outcome.Refused(var fault) -> fault;
            case DecimalText.Outcome.Read(var decimal) -> withUnit(decimal, whole.group("rest"), magnitude, negative);
        };
    }

    private Parsed withUnit(Decimal decimal, String spelling, String magnitude, boolean negative) {
        Optional<Unit> unit = spelling.isEmpty() ? bare : UnitText.find(spelling, kind);
        if (unit.isPresent()) {
            return value(List.of(new Part(decimal, unit.get())), negative);
        }
        if (spelling.isEmpty()) {
            return fault(quoted() + " has no unit", "write the unit: " + units());
        }
        List<Part> parts = parts(magnitude);
        if (parts.size() > 1) {
            return compound(parts, negative);
        }
        Optional<Unit> elsewhere = UnitText.findElsewhere(spelling, kind.si().dimension());
        if (elsewhere.isPresent()) {
            return wrongDimension(elsewhere.get().dimension().noun());
        }
        return fromLibrary(decimal, spelling, negative);
    }

    private Parsed fromLibrary(Decimal decimal, String spelling, boolean negative) {
        return switch (UnitLibrary.find(
                CharacterForms.plain(spelling), kind.si().dimension())) {
            case UnitLibrary.Found.Fitting(var toSi) -> {
                double number = signed(decimal.number(), negative).doubleValue();
                double step = Math.abs(
                        toSi.applyAsDouble(number + decimal.step().doubleValue()) - toSi.applyAsDouble(number));
                yield finite(toSi.applyAsDouble(number), kind.si(), step);
            }
            case UnitLibrary.Found.OtherDimension() -> wrongDimension("another kind of quantity");
            case UnitLibrary.Found.Unknown() ->
                fault("\"" + spelling + "\" is no unit known here", "write it in " + units());
        };
    }

    /// One number and its unit, of several.
    private record Part(Decimal decimal, Unit unit) {}

    /// The parts of `22 ft 4 in`; empty when the text is not made of such parts.
    private List<Part> parts(String magnitude) {
        var parts = new ArrayList<Part>();
        // A dash between feet and inches, 20'-6", is no sign.
        Matcher matcher = PART.matcher(magnitude.replaceAll("(?<=['\\p{L}]) *- *(?=\\d)", " "));
        int end = 0;
        while (matcher.lookingAt()) {
            String spelling = matcher.group("unit");
            Optional<Unit> unit = spelling.isEmpty() ? smallerThanLast(parts) : UnitText.find(spelling, kind);
            if (unit.isEmpty()
                    || !(DecimalText.read(matcher.group("number"), comma)
                            instanceof DecimalText.Outcome.Read(var decimal))) {
                return List.of();
            }
            parts.add(new Part(decimal, unit.get()));
            end = matcher.end();
            matcher.region(end, matcher.regionEnd());
            if (spelling.isEmpty()) {
                break;
            }
        }
        return end == matcher.regionEnd() ? parts : List.of();
    }

    /// What a last number without a unit is in: inches after feet, minutes after hours, seconds after minutes.
    private static Optional<Unit> smallerThanLast(List<Part> parts) {
        if (parts.isEmpty()) {
            return Optional.empty();
        }
        return switch (parts.getLast().unit()) {
            case FOOT -> Optional.of(Unit.INCH);
            case HOUR -> Optional.of(Unit.MINUTE);
            case MINUTE -> Optional.of(Unit.SECOND);
            default -> Optional.empty();
        };
    }

    private Parsed compound(List<Part> parts, boolean negative) {
        for (int i = 1; i < parts.size(); i++) {
            Part larger = parts.get(i - 1);
            Part smaller = parts.get(i);
            long ratio = wholeRatio(larger.unit(), smaller.unit());
            if (ratio < 2) {
                return fault(
                        quoted() + ": " + smaller.unit().symbol() + " does not follow "
                                + larger.unit().symbol(),
                        "write it in one unit");
            }
            if (larger.decimal().number().stripTrailingZeros().scale() > 0) {
                return fault(
                        quoted() + ": only the last part may have a fraction",
                        "write it in " + larger.unit().symbol() + " alone");
            }
            if (smaller.decimal().number().compareTo(BigDecimal.valueOf(ratio)) >= 0) {
                return fault(
                        quoted() + ": " + ratio + " " + smaller.unit().symbol() + " are a whole "
                                + larger.unit().symbol(),
                        "check both parts");
            }
        }
        return value(parts, negative);
    }

    /// How many of the smaller unit make one of the larger; 0 when they are no whole number.
    private static long wholeRatio(Unit larger, Unit smaller) {
        double ratio = smaller.differenceFromSi(larger.differenceToSi(1));
        long whole = Math.round(ratio);
        return Math.abs(ratio - whole) < 1e-9 * whole ? whole : 0;
    }

    /// Sums the parts exactly, in the smallest unit, and converts once.
    private Parsed value(List<Part> parts, boolean negative) {
        Part last = parts.getLast();
        BigDecimal sum = BigDecimal.ZERO;
        for (var part : parts) {
            long ratio = wholeRatio(part.unit(), last.unit());
            sum = sum.add(part.decimal().number().multiply(BigDecimal.valueOf(ratio)));
        }
        double si = last.unit().toSi(signed(sum, negative).doubleValue());
        double step = last.unit().differenceToSi(last.decimal().step().doubleValue());
        return finite(si, parts.getFirst().unit(), step);
    }

    private Parsed finite(double si, Unit unit, double step) {
        boolean usable = Double.isFinite(si) && Double.isFinite(step) && step > 0;
        return usable
                ? new Parsed.Value(si + 0.0, unit, step)
                : fault(quoted() + " is out of all range", "check the number and its exponent");
    }

    private static BigDecimal signed(BigDecimal magnitude, boolean negative) {
        return negative ? magnitude.negate() : magnitude;
    }

    private Parsed wrongDimension(String found) {
        return fault(
                quoted() + " is " + found + "; " + kind.si().dimension().noun() + " is wanted",
                "write it in " + units());
    }

    private Parsed fault(String message, String remedy) {
        return new Parsed.Fault(message, remedy);
    }

    private String quoted() {
        String stripped = text.strip();
        return "\"" + (stripped.length() > 40 ? stripped.substring(0, 40) + "…" : stripped) + "\"";
    }

    private String units() {
        String shown = List.of(kind.shown(UnitSystem.METRIC), kind.shown(UnitSystem.IMPERIAL)).stream()
                .map(Unit::symbol)
                .distinct()
                .collect(Collectors.joining(" or "));
        return shown.isEmpty() ? "a plain number" : shown;
    }

    private String example() {
        String symbol = kind.shown(UnitSystem.METRIC).symbol();
        return "such as " + (symbol.isEmpty() ? "12" : "12 " + symbol);
    }
}
