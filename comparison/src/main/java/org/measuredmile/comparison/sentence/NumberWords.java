package org.measuredmile.comparison.sentence;

import java.math.BigDecimal;

/// Numbers in words, as they are said aloud in British English.
///
/// Shape: whole numbers up to 999,999,999; decimals digit by digit after "point", exact halves and quarters as such.
/// Error: IllegalArgumentException for a number beyond that.
final class NumberWords {
    private static final String[] SMALL = {
        "nought",
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
        "nineteen"
    };
    private static final String[] TENS = {
        "", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"
    };
    private static final String[] ORDINALS = {
        "noughth",
        "first",
        "second",
        "third",
        "fourth",
        "fifth",
        "sixth",
        "seventh",
        "eighth",
        "ninth",
        "tenth",
        "eleventh",
        "twelfth"
    };
    private static final int LARGEST = 999_999_999;
    /// Written numbers up to this are words.
    static final int LAST_WORD = 12;

    static final BigDecimal HALF = new BigDecimal("0.5");
    static final BigDecimal QUARTER = new BigDecimal("0.25");
    static final BigDecimal THREE_QUARTERS = new BigDecimal("0.75");

    private NumberWords() {}

    /// A whole number: `two thousand and forty-seven`.
    static String whole(long number) {
        if (Math.abs(number) > LARGEST) {
            throw new IllegalArgumentException(number + " is beyond " + LARGEST);
        }
        if (number < 0) {
            return "minus " + whole(-number);
        }
        if (number < 20) {
            return SMALL[(int) number];
        }
        if (number < 100) {
            String tens = TENS[(int) (number / 10)];
            return number % 10 == 0 ? tens : tens + "-" + SMALL[(int) (number % 10)];
        }
        if (number < 1000) {
            return SMALL[(int) (number / 100)] + " hundred" + rest(number % 100);
        }
        if (number < 1_000_000) {
            return whole(number / 1000) + " thousand" + rest(number % 1000);
        }
        return whole(number / 1_000_000) + " million" + rest(number % 1_000_000);
    }

    private static String rest(long number) {
        if (number == 0) {
            return "";
        }
        return (number < 100 ? " and " : " ") + whole(number);
    }

    /// A decimal without the zeros at its end: `six and a half`, `twenty-one point four`, `nought point nought
    /// six`.
    static String decimal(BigDecimal number) {
        BigDecimal magnitude = number.abs().stripTrailingZeros();
        String sign = number.signum() < 0 ? "minus " : "";
        long whole = magnitude.longValue();
        BigDecimal part = magnitude.subtract(BigDecimal.valueOf(whole));
        if (part.signum() == 0) {
            return sign + whole(whole);
        }
        if (whole > 0 && part.compareTo(HALF) == 0) {
            return sign + whole(whole) + " and a half";
        }
        if (whole > 0 && part.compareTo(QUARTER) == 0) {
            return sign + whole(whole) + " and a quarter";
        }
        if (whole > 0 && part.compareTo(THREE_QUARTERS) == 0) {
            return sign + whole(whole) + " and three quarters";
        }
        var words = new StringBuilder(sign).append(whole(whole)).append(" point");
        String digits = part.toPlainString().substring(2);
        digits.chars().forEach(digit -> words.append(' ').append(SMALL[digit - '0']));
        return words.toString();
    }

    /// The word of a place in an order: `third`, `twenty-fifth`.
    static String ordinal(int place) {
        if (place < ORDINALS.length) {
            return ORDINALS[place];
        }
        String words = whole(place);
        int last = Math.max(words.lastIndexOf('-'), words.lastIndexOf(' ')) + 1;
        return words.substring(0, last) + ordinalOf(words.substring(last));
    }

    private static String ordinalOf(String word) {
        for (int i = 1; i < ORDINALS.length; i++) {
            if (SMALL[i].equals(word)) {
                return ORDINALS[i];
            }
        }
        return word.endsWith("y") ? word.substring(0, word.length() - 1) + "ieth" : word + "th";
    }

    /// A count as it is written in prose: in words up to twelve.
    static String writtenCount(long number) {
        return number >= 0 && number <= LAST_WORD ? whole(number) : Long.toString(number);
    }

    /// A place as it is written in prose: in words up to twelfth, then `13th`.
    static String writtenOrdinal(int place) {
        return place <= LAST_WORD ? ordinal(place) : shortOrdinal(place);
    }

    /// A place in digits: `3rd`, `14th`.
    static String shortOrdinal(int place) {
        boolean teen = place % 100 >= 11 && place % 100 <= 13;
        String ending = switch (place % 10) {
            case 1 -> teen ? "th" : "st";
            case 2 -> teen ? "th" : "nd";
            case 3 -> teen ? "th" : "rd";
            default -> "th";
        };
        return place + ending;
    }

    /// A year, by its two halves: `twenty thirty-one`, `two thousand and five`.
    static String year(int year) {
        int century = year / 100;
        int rest = year % 100;
        if (year < 1100 || year > 9999 || (century % 10 == 0 && rest < 10)) {
            return whole(year);
        }
        if (rest == 0) {
            return whole(century) + " hundred";
        }
        return whole(century) + (rest < 10 ? " oh " : " ") + whole(rest);
    }
}
