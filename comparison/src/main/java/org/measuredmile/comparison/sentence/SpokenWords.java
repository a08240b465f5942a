package org.measuredmile.comparison.sentence;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.measuredmile.quantity.Unit;

/// Turns written words into words to be said: numbers with their units, brackets, signs.
///
/// Shape: what holds no number and no sign stays as it is.
final class SpokenWords {
    private static final Map<String, Unit> UNITS = Arrays.stream(Unit.values())
            .filter(unit -> !unit.symbol().isEmpty())
            .collect(Collectors.toMap(Unit::symbol, Function.identity()));

    private static final String NUMBER = "([−-]?\\d+(?:,\\d{3})*(?:\\.\\d+)?)";
    private static final Pattern QUANTITY = Pattern.compile("(?<![\\w.,])" + NUMBER + "[ \u00a0]?("
            + UNITS.keySet().stream()
                    .sorted(Comparator.comparingInt(String::length).reversed())
                    .map(Pattern::quote)
                    .collect(Collectors.joining("|"))
            + ")(?![\\w/²³])");
    private static final Pattern ALONE = Pattern.compile("(?<![\\w.])" + NUMBER + "(?![\\w])");
    private static final Pattern DATE = Pattern.compile("\\b(\\d{1,2}) (January|February|March|April|May|June|July"
            + "|August|September|October|November|December) (\\d{4})\\b");
    private static final Pattern DIGITS = Pattern.compile("\\d+");

    private SpokenWords() {}

    static String of(String written) {
        String spoken = DATE.matcher(written).replaceAll(SpokenWords::date);
        spoken = QUANTITY.matcher(spoken).replaceAll(SpokenWords::quantity);
        spoken = ALONE.matcher(spoken).replaceAll(one -> NumberWords.decimal(number(one.group(1))));
        spoken = DIGITS.matcher(spoken).replaceAll(one -> " " + digitByDigit(one.group()) + " ");
        spoken = spoken.replace("±", "give or take")
                .replace("%", "per cent")
                .replace("=", " ")
                .replace("/", " per ")
                .replace("+", " plus ")
                .replace('\u00a0', ' ')
                .replaceAll("\\s*\\(", ", ")
                .replace(")", ",");
        return Phrase.tidy(spoken);
    }

    /// `the sixth of May twenty thirty-one`.
    private static String date(MatchResult found) {
        return "the " + NumberWords.ordinal(Integer.parseInt(found.group(1))) + " of " + found.group(2) + " "
                + NumberWords.year(Integer.parseInt(found.group(3)));
    }

    private static String quantity(MatchResult found) {
        return SpokenQuantity.amount(number(found.group(1)), UNITS.getOrDefault(found.group(2), Unit.ONE));
    }

    private static BigDecimal number(String text) {
        return new BigDecimal(text.replace(",", "").replace('−', '-'));
    }

    private static String digitByDigit(String digits) {
        return digits.chars().mapToObj(digit -> NumberWords.whole(digit - '0')).collect(Collectors.joining(" "));
    }
}
