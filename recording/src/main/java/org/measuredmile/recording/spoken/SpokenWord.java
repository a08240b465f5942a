package org.measuredmile.recording.spoken;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.measuredmile.recording.Mark;

/// One word or number of the captions, with the time it was said and how it hangs on the one before.
///
/// Shape: `word` in lower case for words, as written for digits and signs; `from` and `to` are its place in `caption`.
/// Unit: seconds from the clip's start.
record SpokenWord(String word, Gap before, double timeS, Mark caption, int from, int to) {
    /// Captions further apart than this are no longer one phrase.
    private static final double SAME_PHRASE_S = 1.0;

    private static final Pattern PIECE = Pattern.compile("[$£€]?\\d+(?:[.,:/]\\d+)*(?:st|nd|rd|th)\\b"
            + "|[$£€]|\\d+(?:[.,:/]\\d+)*|[½¼¾]|[\\p{L}]+(?:[’'](?!\\d)[\\p{L}]+)?"
            + "(?:/\\p{L}+)?|['\"%°]|[.,;:?!…-]");

    /// What stands between a word and the one before it.
    enum Gap {
        /// Nothing but a space or a hyphen.
        NONE,
        /// A comma.
        COMMA,
        /// The end of a sentence, or silence.
        END
    }

    /// The words of captions in order of time.
    static List<SpokenWord> of(List<Mark> captions) {
        List<Mark> inOrder = captions.stream()
                .sorted(Comparator.comparingDouble(Mark::fromS))
                .toList();
        List<SpokenWord> words = new ArrayList<>();
        Gap gap = Gap.END;
        double lastToS = Double.NEGATIVE_INFINITY;
        for (Mark caption : inOrder) {
            if (caption.fromS() - lastToS > SAME_PHRASE_S) {
                gap = Gap.END;
            }
            gap = add(caption, gap, words);
            lastToS = caption.toS();
        }
        return words;
    }

    private static Gap add(Mark caption, Gap first, List<SpokenWord> words) {
        Gap gap = first;
        Matcher piece = PIECE.matcher(caption.text());
        while (piece.find()) {
            String text = piece.group();
            switch (text) {
                case "-" -> {
                    // A hyphen joins: twenty-two.
                }
                case "," -> gap = gap == Gap.END ? Gap.END : Gap.COMMA;
                case ".", ";", ":", "?", "!", "…" -> gap = isAfterShortUnit(words, gap, text) ? gap : Gap.END;
                default -> {
                    double share = (double) piece.start() / caption.text().length();
                    double timeS = caption.fromS() + share * (caption.toS() - caption.fromS());
                    words.add(new SpokenWord(
                            text.toLowerCase(Locale.ROOT).replace('’', '\''),
                            gap,
                            timeS,
                            caption,
                            piece.start(),
                            piece.end()));
                    gap = Gap.NONE;
                }
            }
        }
        return gap;
    }

    /// "22 ft. 4 in." is one phrase.
    private static boolean isAfterShortUnit(List<SpokenWord> words, Gap gap, String mark) {
        return mark.equals(".")
                && gap == Gap.NONE
                && !words.isEmpty()
                && List.of("ft", "in", "min", "sec").contains(words.getLast().word());
    }

    /// As the captions have it, capitals and all.
    String asWritten() {
        return caption.text().substring(from, to);
    }

    boolean isDigits() {
        return Character.isDigit(word.charAt(0));
    }
}
