package org.measuredmile.recording.spoken;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.spoken.SpokenReading.Confidence;

/// Finds the numbers said in captions: words become digits and a unit, which [QuantityText] then reads as it reads
/// what people type.
///
/// A number without a unit is a candidate when it has decimals or is ten or more, and does not merely count or name
/// something ("level two", "take 12", "the 21st"). Times by the clock and compound quantities ("twenty two feet four
/// inches", "a minute eight") are one number.
public final class SpokenReadings {
    private static final Set<String> HEDGES = Set.of(
            "about",
            "around",
            "nearly",
            "almost",
            "roughly",
            "approximately",
            "maybe",
            "perhaps",
            "say",
            "over",
            "under",
            "just",
            "like",
            "probably",
            "circa",
            "approaching");
    private static final Set<String> NAMING = Set.of(
            "level",
            "gear",
            "mode",
            "number",
            "take",
            "run",
            "attempt",
            "lap",
            "part",
            "step",
            "stage",
            "chapter",
            "day",
            "year",
            "version",
            "bike",
            "size",
            "sprocket",
            "page");
    private static final Set<String> COUNTED = Set.of(
            "dollars",
            "dollar",
            "bucks",
            "quid",
            "euros",
            "euro",
            "o'clock",
            "times",
            "people",
            "bikes",
            "minutes'",
            "grand",
            "teeth",
            "tooth",
            "speed",
            "year",
            "years",
            "days",
            "weeks",
            "months",
            "am",
            "pm",
            "first",
            "second",
            "third",
            "fourth",
            "fifth",
            "sixth",
            "seventh",
            "eighth",
            "ninth");
    private static final Set<String> CURRENCY = Set.of("$", "£", "€");
    private static final BigDecimal FEWEST_BARE = BigDecimal.TEN;

    private final List<SpokenWord> words;
    private final List<SpokenReading> found = new ArrayList<>();

    private SpokenReadings(List<SpokenWord> words) {
        this.words = words;
    }

    /// The candidates in a recording's captions, in order of time.
    public static List<SpokenReading> in(Recording recording) {
        return in(recording.marks(Mark.Kind.CAPTION));
    }

    /// The candidates in captions, in order of time.
    public static List<SpokenReading> in(List<Mark> captions) {
        var reader = new SpokenReadings(SpokenWord.of(captions));
        int at = 0;
        while (at < reader.words.size()) {
            at = reader.readAt(at);
        }
        return List.copyOf(reader.found);
    }

    /// Where a quantity ends, and how it is written in digits.
    private record Phrase(String written, QuantityKind kind, int end, boolean inPieces) {}

    /// Reads what begins at a word; gives the word to go on with.
    private int readAt(int start) {
        Optional<Phrase> quantity = quantity(start);
        if (quantity.isPresent() && keep(start, quantity.get())) {
            return quantity.get().end();
        }
        Optional<SpokenNumber.Said> bare = SpokenNumber.at(words, start);
        if (bare.isEmpty()) {
            return start + 1;
        }
        keepBare(start, bare.get());
        return Math.max(bare.get().end(), start + 1);
    }

    private boolean keep(int start, Phrase phrase) {
        if (!(QuantityText.parsePrinted(phrase.written(), phrase.kind()) instanceof Parsed.Value value)) {
            return false;
        }
        Confidence confidence = phrase.inPieces() ? Confidence.IN_PIECES : Confidence.CLEAR;
        found.add(new SpokenReading(
                words.get(start).timeS(),
                value.si(),
                Optional.of(value.unit()),
                Optional.of(phrase.kind()),
                said(start, phrase.end()),
                phrase.written(),
                isHedged(start, phrase.end()) ? Confidence.HEDGED : confidence));
        return true;
    }

    private void keepBare(int start, SpokenNumber.Said said) {
        String before = start > 0 && words.get(start).before() == SpokenWord.Gap.NONE
                ? words.get(start - 1).word()
                : "";
        String after = follows(said.end()) ? words.get(said.end()).word() : "";
        boolean names = NAMING.contains(before) || COUNTED.contains(after) || CURRENCY.contains(before);
        Optional<BigDecimal> number = said.number();
        if (names || number.isEmpty()) {
            return;
        }
        Optional<SpokenUnit.Said> shared = unitOfRange(said.end());
        if (shared.isPresent()) {
            keep(
                    start,
                    new Phrase(
                            said.digits() + " " + shared.get().spelling(),
                            shared.get().kind(),
                            said.end(),
                            false));
            return;
        }
        boolean hasDecimals = said.digits().indexOf('.') >= 0;
        if (hasDecimals || number.get().abs().compareTo(FEWEST_BARE) >= 0) {
            found.add(new SpokenReading(
                    words.get(start).timeS(),
                    number.get().doubleValue(),
                    Optional.empty(),
                    Optional.empty(),
                    said(start, said.end()),
                    said.digits(),
                    isHedged(start, said.end()) ? Confidence.HEDGED : Confidence.BARE));
        }
    }

    /// "fifteen to sixteen miles an hour": the first number has the second one's unit.
    private Optional<SpokenUnit.Said> unitOfRange(int end) {
        boolean ranges =
                follows(end) && Set.of("to", "or").contains(words.get(end).word());
        return ranges
                ? SpokenNumber.at(words, end + 1).flatMap(second -> SpokenUnit.at(words, second.end()))
                : Optional.empty();
    }

    private boolean follows(int at) {
        return at < words.size() && words.get(at).before() == SpokenWord.Gap.NONE;
    }

    private boolean isHedged(int start, int end) {
        boolean before = start > 0
                && words.get(start).before() == SpokenWord.Gap.NONE
                && (HEDGES.contains(words.get(start - 1).word()) || isRange(start - 1));
        boolean after = follows(end) && (words.get(end).word().equals("ish") || isOrSo(end) || isRange(end));
        return before || after;
    }

    private boolean isRange(int at) {
        return Set.of("to", "or").contains(words.get(at).word())
                && at > 0
                && isNumber(at - 1)
                && SpokenNumber.at(words, at + 1).isPresent();
    }

    private boolean isNumber(int at) {
        return SpokenNumber.at(words, at).isPresent();
    }

    private boolean isOrSo(int at) {
        return words.get(at).word().equals("or")
                && follows(at + 1)
                && words.get(at + 1).word().equals("so");
    }

    private Optional<Phrase> quantity(int start) {
        if (words.get(start).isDigits() && words.get(start).word().indexOf(':') > 0) {
            return SpokenNumber.at(words, start)
                    .map(clock -> new Phrase(clock.digits(), QuantityKind.TIME, afterTimeUnit(clock.end()), false));
        }
        Optional<Phrase> part = article(start).or(() -> share(start));
        if (part.isPresent()) {
            return part;
        }
        return SpokenNumber.at(words, start)
                .flatMap(number -> SpokenUnit.at(words, ofA(number))
                        .filter(unit -> !isOrdinal(number, unit))
                        .map(unit -> compound(number, unit)));
    }

    /// "point four of a second": where the unit of a part begins.
    private int ofA(SpokenNumber.Said number) {
        boolean isPart = number.digits().startsWith("0.")
                && follows(number.end())
                && words.get(number.end()).word().equals("of")
                && follows(number.end() + 1)
                && Set.of("a", "an").contains(words.get(number.end() + 1).word());
        return isPart ? number.end() + 2 : number.end();
    }

    private int afterTimeUnit(int end) {
        return SpokenUnit.at(words, end)
                .filter(unit -> unit.kind() == QuantityKind.TIME)
                .map(SpokenUnit.Said::end)
                .orElse(end);
    }

    /// "the twenty second run" names one; "one second" and "half a second" measure.
    private boolean isOrdinal(SpokenNumber.Said number, SpokenUnit.Said unit) {
        return unit.spelling().equals("second")
                && number.digits().indexOf('.') < 0
                && !number.digits().equals("1");
    }

    /// "a minute eight", "a mile and a half"; "a minute" alone is a way of speaking.
    private Optional<Phrase> article(int start) {
        if (!Set.of("a", "an").contains(words.get(start).word())) {
            return Optional.empty();
        }
        return SpokenUnit.at(words, start + 1).flatMap(unit -> {
            Phrase phrase = compound(new SpokenNumber.Said("1", start + 1, false), unit);
            return phrase.end() > unit.end() ? Optional.of(phrase) : Optional.empty();
        });
    }

    /// "half a mile", "a quarter of a mile", "three quarters of a mile", "half an hour".
    private Optional<Phrase> share(int start) {
        Optional<SpokenNumber.Said> share = words.get(start).word().equals("half")
                ? Optional.of(new SpokenNumber.Said("0.5", start + 1, false))
                : SpokenNumber.fraction(words, start);
        return share.filter(
                        said -> said.end() > start && !words.get(start).word().equals("and"))
                .flatMap(said -> {
                    int end = said.end();
                    end += follows(end) && words.get(end).word().equals("of") ? 1 : 0;
                    end += follows(end)
                                    && Set.of("a", "an").contains(words.get(end).word())
                            ? 1
                            : 0;
                    return SpokenUnit.at(words, end)
                            .map(unit ->
                                    new Phrase(said.digits() + " " + unit.spelling(), unit.kind(), unit.end(), false));
                });
    }

    /// A number with its unit, and the smaller part or the half that follows, where one does.
    private Phrase compound(SpokenNumber.Said number, SpokenUnit.Said unit) {
        String first = number.digits() + " " + unit.spelling();
        var plain = new Phrase(first, unit.kind(), unit.end(), number.inPieces());
        Optional<SpokenNumber.Said> half = SpokenNumber.fraction(words, unit.end());
        if (half.isPresent() && follows(unit.end()) && number.number().isPresent()) {
            String sum = number.number()
                    .get()
                    .add(new BigDecimal(half.get().digits()))
                    .toPlainString();
            return new Phrase(
                    sum + " " + unit.spelling(), unit.kind(), half.get().end(), number.inPieces());
        }
        boolean hasSmaller = Set.of(Unit.FOOT, Unit.HOUR, Unit.MINUTE, Unit.POUND, Unit.STONE)
                .contains(unit.unit());
        if (!hasSmaller || unit.end() >= words.size() || words.get(unit.end()).before() == SpokenWord.Gap.END) {
            return plain;
        }
        boolean comma = words.get(unit.end()).before() == SpokenWord.Gap.COMMA;
        int next = unit.end() + (words.get(unit.end()).word().equals("and") ? 1 : 0);
        return SpokenNumber.at(words, next)
                .flatMap(second -> joined(plain, second, comma || next > unit.end()))
                .orElse(plain);
    }

    /// The two parts as one quantity, where they make one; a last part without its unit must follow at once.
    private Optional<Phrase> joined(Phrase first, SpokenNumber.Said second, boolean parted) {
        Optional<SpokenUnit.Said> unit = inches(second.end()).or(() -> SpokenUnit.at(words, second.end()));
        if (unit.isEmpty() && parted) {
            return Optional.empty();
        }
        String written = first.written() + " " + second.digits()
                + unit.map(one -> " " + one.spelling()).orElse("");
        boolean isOne = QuantityText.parsePrinted(written, first.kind()) instanceof Parsed.Value;
        return isOne
                ? Optional.of(new Phrase(
                        written,
                        first.kind(),
                        unit.map(SpokenUnit.Said::end).orElse(second.end()),
                        first.inPieces() || second.inPieces()))
                : Optional.empty();
    }

    /// Behind feet, "in" is inches.
    private Optional<SpokenUnit.Said> inches(int at) {
        return follows(at) && words.get(at).word().equals("in")
                ? Optional.of(new SpokenUnit.Said("in", Unit.INCH, QuantityKind.LENGTH, at + 1))
                : Optional.empty();
    }

    /// The words from one to before another, as the captions have them.
    private String said(int from, int to) {
        SpokenWord first = words.get(from);
        var text = new StringBuilder();
        int pieceFrom = first.from();
        for (int i = from; i < to; i++) {
            SpokenWord word = words.get(i);
            boolean isLast = i + 1 == to || !words.get(i + 1).caption().equals(word.caption());
            if (isLast) {
                text.append(text.isEmpty() ? "" : " ").append(word.caption().text(), pieceFrom, word.to());
                pieceFrom = i + 1 < to ? words.get(i + 1).from() : pieceFrom;
            }
        }
        return text.toString();
    }
}
