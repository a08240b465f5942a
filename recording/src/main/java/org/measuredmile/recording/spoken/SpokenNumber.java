package org.measuredmile.recording.spoken;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/// Reads numbers in words or digits: "nineteen point four", "one hundred and five", "fifteen and a half", "19 point 4".
///
/// Shape: English cardinals below a million, decimals said digit by digit, halves and quarters. A number never reaches
/// over a comma or the end of a sentence.
final class SpokenNumber {
    private static final Pattern DIGITS = Pattern.compile("\\d{1,3}(?:,\\d{3})+(?:\\.\\d+)?|\\d{1,9}(?:\\.\\d{1,9})?");
    private static final Pattern CLOCK = Pattern.compile("\\d{1,2}(?::\\d{2}){1,2}(?:\\.\\d{1,3})?");
    private static final Map<String, Integer> SMALL = numbered(
            0,
            "zero",
            "one",
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
            "thirteen",
            "fourteen",
            "fifteen",
            "sixteen",
            "seventeen",
            "eighteen",
            "nineteen");
    private static final List<String> TENS =
            List.of("", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety");

    private final List<SpokenWord> words;
    private final int start;
    private int at;
    private boolean inPieces;

    private SpokenNumber(List<SpokenWord> words, int start) {
        this.words = words;
        this.start = start;
        this.at = start;
    }

    /// A number in digits and where the words after it begin.
    record Said(String digits, int end, boolean inPieces) {
        /// The number itself; nothing for a time by the clock.
        Optional<BigDecimal> number() {
            return digits.indexOf(':') >= 0 ? Optional.empty() : Optional.of(new BigDecimal(digits));
        }
    }

    /// The number that begins with a word; nothing when none does.
    static Optional<Said> at(List<SpokenWord> words, int start) {
        return start < words.size() ? new SpokenNumber(words, start).read() : Optional.empty();
    }

    /// The share that "and a half", "and three quarters" or "1/2" adds, from a word on.
    static Optional<Said> fraction(List<SpokenWord> words, int start) {
        var reader = new SpokenNumber(words, start);
        return reader.fractionHere().map(share -> new Said(share.toPlainString(), reader.at, false));
    }

    private Optional<Said> read() {
        if (word(0).equals("minus")) {
            at++;
            return magnitude().map(said -> new Said("-" + said.digits(), said.end(), said.inPieces()));
        }
        return magnitude();
    }

    private Optional<Said> magnitude() {
        if (CLOCK.matcher(word(0)).matches()) {
            return Optional.of(new Said(word(0), at + 1, false));
        }
        String whole = word(0).equals("point") ? "0" : whole();
        if (whole.isEmpty()) {
            return Optional.empty();
        }
        if (whole.indexOf('.') < 0) {
            String decimals = decimals();
            if (!decimals.isEmpty()) {
                return Optional.of(new Said(whole + "." + decimals, at, inPieces));
            }
        }
        if (word(0).equals("point") && at == start) {
            return Optional.empty();
        }
        String digits = fractionHere()
                .map(share -> new BigDecimal(whole).add(share).toPlainString())
                .orElse(whole);
        return Optional.of(new Said(digits, at, inPieces));
    }

    /// The word so many further on, of the same phrase; empty text when there is none.
    private String word(int further) {
        int index = at + further;
        boolean joined = index < words.size();
        for (int i = start + 1; joined && i <= index; i++) {
            joined = words.get(i).before() == SpokenWord.Gap.NONE;
        }
        return joined ? words.get(index).word() : "";
    }

    private String whole() {
        if (DIGITS.matcher(word(0)).matches()) {
            String plain = word(0).replace(",", "");
            at++;
            return plain.indexOf('.') < 0 ? Long.toString(multiplied(Long.parseLong(plain))) : plain;
        }
        if (word(0).equals("a") && (word(1).equals("hundred") || word(1).equals("thousand"))) {
            at++;
            return Long.toString(multiplied(1));
        }
        int group = belowThousand();
        return group < 0 ? "" : Long.toString(multiplied(group));
    }

    private long multiplied(long first) {
        long value = first;
        if (value > 0 && value < 100 && word(0).equals("hundred")) {
            at++;
            value = value * 100 + rest(99);
        }
        if (value > 0 && value < 1000 && word(0).equals("thousand")) {
            at++;
            value = value * 1000 + rest(999);
        }
        return value;
    }

    /// What follows hundred or thousand, with or without "and"; 0 when nothing does.
    private int rest(int most) {
        int before = at;
        at += word(0).equals("and") ? 1 : 0;
        int value = most < 100 ? belowHundred() : belowThousand();
        if (value < 1 || value > most) {
            at = before;
            return 0;
        }
        return value;
    }

    private int belowThousand() {
        int first = belowHundred();
        if (first < 1) {
            return first;
        }
        if (word(0).equals("hundred")) {
            at++;
            return first * 100 + rest(99);
        }
        return first < 10 ? pieced(first) : first;
    }

    /// "two fifty" and "one oh five".
    private int pieced(int first) {
        int before = at;
        if (isZero(word(0)) && !word(0).equals("zero")) {
            at++;
            int last = belowHundred();
            if (last > 0 && last < 10) {
                inPieces = true;
                return first * 100 + last;
            }
        } else {
            int last = belowHundred();
            if (last >= 10 && !word(0).equals("hundred")) {
                inPieces = true;
                return first * 100 + last;
            }
        }
        at = before;
        return first;
    }

    private int belowHundred() {
        int tens = TENS.indexOf(word(0));
        if (tens >= 2) {
            at++;
            int unit = SMALL.getOrDefault(word(0), -1);
            if (unit >= 1 && unit <= 9) {
                at++;
                return tens * 10 + unit;
            }
            return tens * 10;
        }
        int small = word(0).equals("nought") ? 0 : SMALL.getOrDefault(word(0), -1);
        at += small < 0 ? 0 : 1;
        return small;
    }

    private static boolean isZero(String word) {
        return word.equals("oh") || word.equals("o") || word.equals("zero") || word.equals("nought");
    }

    /// The digits after "point"; empty, with nothing taken, when there are none.
    private String decimals() {
        if (!word(0).equals("point")) {
            return "";
        }
        int before = at;
        at++;
        var digits = new StringBuilder();
        if (word(0).matches("\\d{1,9}")) {
            digits.append(word(0));
            at++;
        } else if (TENS.indexOf(word(0)) >= 2 || SMALL.getOrDefault(word(0), 0) >= 10) {
            digits.append(belowHundred());
        } else {
            while (isZero(word(0)) || SMALL.getOrDefault(word(0), 10) < 10) {
                digits.append(isZero(word(0)) ? 0 : SMALL.getOrDefault(word(0), 0));
                at++;
            }
        }
        if (digits.isEmpty()) {
            at = before;
        }
        return digits.toString();
    }

    private Optional<BigDecimal> fractionHere() {
        int and = word(0).equals("and") ? 1 : 0;
        String first = word(and);
        int taken = switch (first) {
            case "½", "¼", "¾", "1/2", "1/4", "3/4" -> 1;
            case "a", "one" -> word(and + 1).equals("half") || word(and + 1).equals("quarter") ? 2 : 0;
            case "three" -> word(and + 1).equals("quarters") ? 2 : 0;
            default -> 0;
        };
        boolean inWords = taken == 2;
        if (taken == 0 || (inWords && and == 0 && at > start)) {
            return Optional.empty();
        }
        String named = inWords ? first + " " + word(and + 1) : first;
        at += and + taken;
        return Optional.of(
                switch (named) {
                    case "½", "1/2", "a half", "one half" -> new BigDecimal("0.5");
                    case "¼", "1/4", "a quarter", "one quarter" -> new BigDecimal("0.25");
                    default -> new BigDecimal("0.75");
                });
    }

    private static Map<String, Integer> numbered(int first, String... names) {
        Map<String, Integer> numbers = new HashMap<>();
        for (int i = 0; i < names.length; i++) {
            numbers.put(names[i], first + i);
        }
        return Map.copyOf(numbers);
    }
}
