package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.measuredmile.recording.Mark;

/// Makes marks of cues, with words that rolling captions show again kept once, where they were first shown.
///
/// Rolling captions push a line up and set the next one under it, or let a line grow word by word; the words that
/// stand already were not said again. A person may say a word twice too: so repeats are taken out only of a file where
/// they are the rule among cues that touch (a fifth of them, and twice at least). Cues that are wholly alike, words
/// and times, are one cue in any file.
final class RepeatedWords {
    /// How near the end of one cue the next must begin for its words to be a repetition.
    static final double TOUCHING_S = 0.05;

    private static final int FEWEST = 2;
    private static final double RULE = 0.2;

    private RepeatedWords() {}

    static List<Mark> once(List<CaptionCue> cues, Remarks remarks) {
        boolean rolling = isRolling(cues);
        List<Mark> marks = new ArrayList<>();
        for (int i = 0; i < cues.size(); i++) {
            CaptionCue cue = cues.get(i);
            List<String> lines = cue.lines();
            if (i > 0 && isSame(cues.get(i - 1), cue)) {
                lines = List.of();
            } else if (i > 0 && rolling && touches(cues.get(i - 1), cue)) {
                lines = fresh(cues.get(i - 1).lines(), lines);
            }
            if (!lines.equals(cue.lines())) {
                remarks.count(Remark.REPEATED_WORDS, cue.line());
            }
            if (!lines.isEmpty()) {
                marks.add(new Mark(Mark.Kind.CAPTION, cue.fromS(), cue.toS(), String.join(" ", lines)));
            }
        }
        return marks;
    }

    private static boolean isSame(CaptionCue before, CaptionCue cue) {
        return before.fromS() == cue.fromS()
                && before.toS() == cue.toS()
                && before.lines().equals(cue.lines());
    }

    private static boolean isRolling(List<CaptionCue> cues) {
        int touching = 0;
        int repeating = 0;
        for (int i = 1; i < cues.size(); i++) {
            CaptionCue before = cues.get(i - 1);
            CaptionCue cue = cues.get(i);
            if (touches(before, cue) && !isSame(before, cue)) {
                touching++;
                List<String> fresh = fresh(before.lines(), cue.lines());
                repeating += !fresh.isEmpty() && !fresh.equals(cue.lines()) ? 1 : 0;
            }
        }
        return repeating >= FEWEST && repeating >= RULE * touching;
    }

    private static boolean touches(CaptionCue before, CaptionCue cue) {
        return cue.fromS() <= before.toS() + TOUCHING_S && cue.fromS() >= before.fromS();
    }

    /// The lines without those at their head that were the last of the cue before, and without the words of a first
    /// line that only grew.
    private static List<String> fresh(List<String> before, List<String> now) {
        for (int same = Math.min(before.size(), now.size()); same > 0; same--) {
            if (before.subList(before.size() - same, before.size()).equals(now.subList(0, same))) {
                return now.subList(same, now.size());
            }
        }
        for (int same = Math.min(before.size(), now.size()); same > 0; same--) {
            List<String> stood = before.subList(before.size() - same, before.size());
            if (stood.subList(0, same - 1).equals(now.subList(0, same - 1))) {
                String grown = grownBy(stood.getLast(), now.get(same - 1));
                if (!grown.isEmpty()) {
                    List<String> fresh = new ArrayList<>(List.of(grown));
                    fresh.addAll(now.subList(same, now.size()));
                    return fresh;
                }
            }
        }
        return now;
    }

    /// The words that a line has more than the one it grew from; empty when it did not grow from it.
    private static String grownBy(String before, String now) {
        String[] stood = before.split(" ");
        String[] stands = now.split(" ");
        boolean grew = stands.length > stood.length && Arrays.equals(stood, Arrays.copyOf(stands, stood.length));
        return grew ? String.join(" ", Arrays.asList(stands).subList(stood.length, stands.length)) : "";
    }
}
