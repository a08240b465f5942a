package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;

/// Takes captions line by line and makes cues of their blocks; a damaged block is named and costs itself only.
///
/// Blocks are parted by empty lines. NOTE, STYLE and REGION blocks, the head and what stands before the times of a cue
/// are passed over. A second line of times begins a new cue even without an empty line before it.
/// Source: W3C, WebVTT, 6.1 (the parser's algorithm).
final class CaptionBlocks {
    private static final int MOST_CUES = 500_000;
    private static final int MOST_LINES = 100;
    private static final int MOST_NAMED = 100;
    private static final String ARROW = "-->";
    private static final Pattern PASSED_OVER = Pattern.compile("(?:NOTE|STYLE|REGION|Region:)(?:[ \\t].*)?");

    private final Remarks remarks;
    private final List<CaptionCue> cues = new ArrayList<>();
    private final List<String> lines = new ArrayList<>();
    private Optional<CueTime.Span> span = Optional.empty();
    private State state = State.BETWEEN;
    private long timeLine;
    private long firstLine;
    private long seen;
    private long named;
    private double lastFromS;

    /// Where in a block the next line stands.
    private enum State {
        BETWEEN,
        PASSING_OVER,
        BEFORE_TIMES,
        WORDS,
        BROKEN_TIMES
    }

    CaptionBlocks(Remarks remarks) {
        this.remarks = remarks;
    }

    boolean isFull() {
        if (cues.size() < MOST_CUES) {
            return false;
        }
        remarks.count(Remark.TOO_LONG, timeLine, Long.toString(timeLine));
        return true;
    }

    List<CaptionCue> cues() {
        return cues;
    }

    /// How many cues the file held, kept or not.
    long seen() {
        return seen;
    }

    void take(String line, long number) {
        if (number == 1 && line.startsWith("WEBVTT")) {
            state = State.PASSING_OVER;
        } else if (line.isBlank()) {
            end();
        } else if (line.contains(ARROW)
                && (state != State.PASSING_OVER || CueTime.read(line).isPresent())) {
            times(line, number);
        } else {
            words(line, number);
        }
    }

    private void times(String line, long number) {
        if (state == State.WORDS || state == State.BROKEN_TIMES) {
            dropCounter();
            end();
        }
        lines.clear();
        seen++;
        timeLine = number;
        span = CueTime.read(line);
        state = span.isPresent() ? State.WORDS : State.BROKEN_TIMES;
        if (span.isEmpty()) {
            firstLine = number;
            lines.add(line.strip());
        }
    }

    /// Without an empty line between two cues, the next one's number is the last line of words.
    private void dropCounter() {
        if (!lines.isEmpty() && lines.getLast().matches("\\d{1,9}")) {
            lines.removeLast();
        }
    }

    private void words(String line, long number) {
        if (state == State.BETWEEN) {
            boolean passedOver = PASSED_OVER.matcher(line.strip()).matches();
            state = passedOver ? State.PASSING_OVER : State.BEFORE_TIMES;
            firstLine = number;
        }
        if (state != State.PASSING_OVER && lines.size() < MOST_LINES) {
            lines.add(line.strip());
        }
    }

    /// Closes the block that is open.
    void end() {
        switch (state) {
            case WORDS -> keep();
            case BROKEN_TIMES ->
                damaged(firstLine, "the times \"" + Remarks.quoted(lines.getFirst()) + "\" cannot be read", said(1));
            case BEFORE_TIMES -> {
                seen++;
                damaged(firstLine, "a block without a line of times", said(0));
            }
            case BETWEEN, PASSING_OVER -> {
                // Nothing was begun.
            }
        }
        state = State.BETWEEN;
        lines.clear();
        span = Optional.empty();
    }

    private void keep() {
        CueTime.Span at = span.orElseThrow();
        List<String> plain = CaptionText.plain(lines);
        if (at.toS() < at.fromS()) {
            damaged(timeLine, "it ends at " + at.toS() + " s, before it begins at " + at.fromS() + " s", said(0));
        } else if (plain.isEmpty()) {
            remarks.count(Remark.CUE_WITHOUT_WORDS, timeLine);
        } else {
            if (!cues.isEmpty() && at.fromS() < lastFromS) {
                remarks.count(Remark.CUE_OUT_OF_ORDER, timeLine);
            } else if (!cues.isEmpty() && at.fromS() < cues.getLast().toS() - RepeatedWords.TOUCHING_S) {
                remarks.count(Remark.OVERLAPPING_CUES, timeLine);
            }
            lastFromS = at.fromS();
            cues.add(new CaptionCue(at.fromS(), at.toS(), plain, timeLine));
        }
    }

    private String said(int from) {
        String words = String.join(" ", CaptionText.plain(lines.subList(from, lines.size())));
        return words.isEmpty() ? "" : ": \"" + Remarks.quoted(words) + "\"";
    }

    private void damaged(long line, String what, String said) {
        named++;
        if (named > MOST_NAMED) {
            remarks.count(Remark.DAMAGED_CUES, line);
        } else {
            remarks.add(Finding.warning(
                    "damaged-cue",
                    Place.atLine(remarks.source(), line),
                    "a cue was left out, since " + what + said,
                    "write its times like 00:01:05.250 --> 00:01:08.000"));
        }
    }
}
