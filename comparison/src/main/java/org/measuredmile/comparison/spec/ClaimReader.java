package org.measuredmile.comparison.spec;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.quantity.UnitText;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.SpecLine;

/// Reads the claimed cell of one line with the unit of its column.
final class ClaimReader {
    private static final int LONGEST = 120;
    private static final int WORDS = Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE;
    private static final Pattern ABOUT =
            Pattern.compile("(?:about|approx\\.?|approximately|roughly|circa|ca\\.?|~|≈)\\s*(?=[\\d.,<>≤≥])", WORDS);
    private static final Pattern UP_TO = Pattern.compile("up[ -]to\\s+", WORDS);
    private static final Pattern AT_LEAST =
            Pattern.compile("(?:at least|no less than|more than|over|from|minimum|min\\.?|>=|≥|>)\\s*", WORDS);
    private static final Pattern AT_MOST =
            Pattern.compile("(?:at most|(?:no|not) more than|less than|under|maximum|max\\.?|<=|≤|<)\\s*", WORDS);
    private static final Pattern OR_MORE = Pattern.compile("\\s*(?:\\bor more|\\+)$", WORDS);
    private static final Pattern OR_LESS = Pattern.compile("\\s*\\b(?:or less|maximum|max\\.?)$", WORDS);
    private static final Pattern BETWEEN = Pattern.compile("(?:between|from)\\s+", WORDS);
    private static final Pattern TO = Pattern.compile("\\s+(?:to|and)\\s+|\\s*(?:\\.{2,3}|[-–—−…])\\s*", WORDS);
    private static final Pattern BRACKETS = Pattern.compile("([^()]+)\\(([^()]+)\\)");
    private static final Pattern SLASH = Pattern.compile("(.+?)\\s+/\\s+(.+)");
    private static final Pattern DECIMAL_COMMA =
            Pattern.compile("(?<![\\d.,])(?:\\d{0,9},\\d+|\\d{1,3}(?:\\.\\d{3})+,\\d+)(?![\\d.,])");

    private final SpecLine line;
    private final QuantityKind kind;
    private final List<Finding> notes = new ArrayList<>();

    ClaimReader(SpecLine line, QuantityKind kind) {
        this.line = line;
        this.kind = kind;
    }

    /// What the cell says.
    sealed interface Outcome {
        record Read(Wanted wanted, Unit unit, double stepSi) implements Outcome {}

        record Refused(Finding finding) implements Outcome {}
    }

    /// What was taken for what, in the order met.
    List<Finding> notes() {
        return notes;
    }

    Outcome read() {
        String text = line.claimed().strip();
        if (text.length() > LONGEST) {
            return refuse("the text is too long for a claim", "write one value, a range, or up to and a value");
        }
        Optional<Unit> column = Optional.empty();
        if (!line.unit().isBlank()) {
            column = UnitText.find(line.unit(), kind);
            if (column.isEmpty()) {
                return unknownUnit();
            }
        }
        Outcome outcome = whole(text, column);
        if (outcome instanceof Outcome.Read && DECIMAL_COMMA.matcher(text).find()) {
            notes.add(SpecSlip.CLAIM_DECIMAL_COMMA.at(ClaimText.at(line, "claimed"), ClaimConditions.quoted(text)));
        }
        return outcome;
    }

    /// A claim, or the same claim in two units.
    private Outcome whole(String text, Optional<Unit> column) {
        Outcome plain = bounded(text, column);
        if (plain instanceof Outcome.Read) {
            return plain;
        }
        for (Pattern pattern : List.of(BRACKETS, SLASH)) {
            Matcher both = pattern.matcher(text);
            if (both.matches()
                    && bounded(both.group(1).strip(), column) instanceof Outcome.Read first
                    && bounded(both.group(2).strip(), Optional.empty()) instanceof Outcome.Read second) {
                return agreed(text, first, second);
            }
        }
        return plain;
    }

    private Outcome agreed(String text, Outcome.Read first, Outcome.Read second) {
        double[] one = first.wanted().named();
        double[] other = second.wanted().named();
        boolean agree = one.length == other.length;
        for (int i = 0; agree && i < one.length; i++) {
            agree = Math.abs(one[i] - other[i]) <= Math.max(first.stepSi(), second.stepSi());
        }
        if (agree) {
            return first;
        }
        var place = ClaimText.at(line, "claimed");
        String asFirst = printed(second.wanted(), first.unit());
        return new Outcome.Refused(SpecSlip.CLAIM_TWO_VALUES.at(
                place, ClaimConditions.quoted(text), printed(first.wanted(), first.unit()), asFirst));
    }

    private static String printed(Wanted wanted, Unit unit) {
        return Stream.of(wanted.named())
                .flatMapToDouble(java.util.Arrays::stream)
                .mapToObj(si -> SpecText.plain(si, unit))
                .collect(java.util.stream.Collectors.joining(" to "));
    }

    /// A value or a range with a word in front or behind that says which side is meant.
    private Outcome bounded(String text, Optional<Unit> column) {
        Matcher about = ABOUT.matcher(text);
        if (about.lookingAt()) {
            Outcome rest = bounded(text.substring(about.end()), column);
            if (rest instanceof Outcome.Read) {
                var note = SpecSlip.CLAIM_ROUNDED_WORD.at(ClaimText.at(line, "claimed"), ClaimConditions.quoted(text));
                if (!notes.contains(note)) {
                    notes.add(note);
                }
            }
            return rest;
        }
        Outcome range = valueOrRange(text, column);
        if (range instanceof Outcome.Read) {
            return range;
        }
        return ahead(text, column, UP_TO, Wanted.UpTo::new)
                .or(() -> ahead(text, column, AT_LEAST, Wanted.AtLeast::new))
                .or(() -> ahead(text, column, AT_MOST, Wanted.AtMost::new))
                .or(() -> behind(text, column, OR_MORE, Wanted.AtLeast::new))
                .or(() -> behind(text, column, OR_LESS, Wanted.AtMost::new))
                .orElse(range);
    }

    private interface Side {
        Wanted of(double si);
    }

    private Optional<Outcome> ahead(String text, Optional<Unit> column, Pattern word, Side side) {
        Matcher found = word.matcher(text);
        return found.lookingAt() ? Optional.of(sided(text.substring(found.end()), column, side)) : Optional.empty();
    }

    private Optional<Outcome> behind(String text, Optional<Unit> column, Pattern word, Side side) {
        Matcher found = word.matcher(text);
        return found.find() ? Optional.of(sided(text.substring(0, found.start()), column, side)) : Optional.empty();
    }

    private Outcome sided(String text, Optional<Unit> column, Side side) {
        return switch (value(text, column)) {
            case Parsed.Value(double si, var unit, double step) -> new Outcome.Read(side.of(si), unit, step);
            case Parsed.Fault fault ->
                range(text, column).isPresent()
                        ? refuse(
                                ClaimConditions.quoted(line.claimed()) + " names a range and one side",
                                "write the range alone, or up to and its larger end")
                        : refuse(fault.message(), fault.remedy());
        };
    }

    private Outcome valueOrRange(String text, Optional<Unit> column) {
        Parsed single = value(text, column);
        if (single instanceof Parsed.Value(double si, var unit, double step)) {
            return new Outcome.Read(new Wanted.Exactly(si), unit, step);
        }
        Matcher between = BETWEEN.matcher(text);
        String ends = between.lookingAt() ? text.substring(between.end()) : text;
        var fault = (Parsed.Fault) single;
        return range(ends, column).orElseGet(() -> refuse(fault.message(), fault.remedy()));
    }

    /// The range in a text: parted at the first sign or word at which both sides are quantities.
    private Optional<Outcome> range(String text, Optional<Unit> column) {
        Matcher to = TO.matcher(text);
        while (to.find()) {
            String left = text.substring(0, to.start());
            String right = text.substring(to.end());
            var last = value(right, column.or(() -> unitOf(left)));
            if (last instanceof Parsed.Value high
                    && value(left, unitOf(right).or(() -> column).or(() -> unitOf(left))) instanceof Parsed.Value low) {
                return Optional.of(ends(low, high, left + " to " + right, right + " to " + left));
            }
        }
        return Optional.empty();
    }

    private Outcome ends(Parsed.Value low, Parsed.Value high, String asWritten, String turned) {
        double step = Math.max(low.resolutionSi(), high.resolutionSi());
        if (low.si() > high.si()) {
            return new Outcome.Refused(
                    SpecSlip.CLAIM_RANGE_REVERSED.at(ClaimText.at(line, "claimed"), asWritten, turned));
        }
        var wanted = low.si() < high.si() ? new Wanted.Between(low.si(), high.si()) : new Wanted.Exactly(low.si());
        return new Outcome.Read(wanted, high.unit(), step);
    }

    private Optional<Unit> unitOf(String text) {
        return QuantityText.parse(text, kind) instanceof Parsed.Value value
                ? Optional.of(value.unit())
                : Optional.empty();
    }

    /// A quantity with its own unit, or a bare number in the given one.
    private Parsed value(String text, Optional<Unit> bare) {
        Parsed own = QuantityText.parse(text, kind);
        if (own instanceof Parsed.Value value) {
            noteTwoUnits(text, value.unit());
            return own;
        }
        return bare.map(unit -> QuantityText.parse(text, kind, unit)).orElse(own);
    }

    private void noteTwoUnits(String text, Unit own) {
        boolean other = !line.unit().isBlank()
                && UnitText.find(line.unit(), kind).filter(unit -> unit != own).isPresent();
        if (other && kind != QuantityKind.COUNT) {
            var note = SpecSlip.CLAIM_UNIT_TWICE.at(
                    ClaimText.at(line, "unit"), ClaimConditions.quoted(text), ClaimConditions.quoted(line.unit()));
            if (!notes.contains(note)) {
                notes.add(note);
            }
        }
    }

    private Outcome unknownUnit() {
        String noun = kind.si().dimension().noun();
        String units = Stream.of(UnitSystem.values())
                .map(system -> kind.shown(system).symbol())
                .distinct()
                .collect(java.util.stream.Collectors.joining(" or "));
        return new Outcome.Refused(SpecSlip.CLAIM_NOT_READ.at(
                ClaimText.at(line, "unit"),
                "\"" + ClaimConditions.quoted(line.unit()) + "\" is no unit of " + noun,
                units.isEmpty() ? "leave the unit empty" : "write " + units));
    }

    private Outcome refuse(String message, String remedy) {
        return new Outcome.Refused(SpecSlip.CLAIM_NOT_READ.at(ClaimText.at(line, "claimed"), message, remedy));
    }
}
