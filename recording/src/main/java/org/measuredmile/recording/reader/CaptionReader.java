package org.measuredmile.recording.reader;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;

/// Reads captions: the words said in a clip, each line of them with the time it was shown.
///
/// Shape: a recording without channels and without a start instant; its time base is that of the clip, from 0. Words
/// that rolling captions repeat are kept once.
/// Source: W3C, WebVTT: The Web Video Text Tracks Format (Candidate Recommendation 2019), 4 (syntax) and 6 (parsing);
/// SRT: common practice, no source.
public final class CaptionReader implements RecordingReader {
    private static final Pattern SIGNATURE = Pattern.compile("WEBVTT(?:[ \\t\\r\\n].*)?", Pattern.DOTALL);
    private static final Pattern NUMBERED =
            Pattern.compile("(?:\\d{1,9}[ \\t]*\\R)?[ \\t]*" + CueTime.STAMP + "[ \\t]*-->.*", Pattern.DOTALL);
    private static final int LONGEST_LINE = 4096;

    @Override
    public Format format() {
        return Format.CAPTIONS;
    }

    @Override
    public boolean recognises(byte[] head) {
        String preview = TextHead.preview(head);
        // Empty lines are not left to the pattern, which would go one call deeper for each.
        return SIGNATURE.matcher(preview).matches()
                || NUMBERED.matcher(preview.stripLeading()).matches();
    }

    @Override
    public Decoding read(String name, InputStream bytes) throws IOException {
        Remarks remarks = new Remarks(name);
        CaptionBlocks blocks = new CaptionBlocks(remarks);
        LineSource lines = new LineSource(TextHead.open(bytes), LONGEST_LINE);
        while (lines.next() && !blocks.isFull()) {
            blocks.take(lines.line(), lines.number());
        }
        blocks.end();
        List<CaptionCue> cues = blocks.cues();
        if (cues.isEmpty()) {
            return remarks.refuse(
                    "no-cue",
                    Place.in(name),
                    "no line of words with its times stands in it",
                    "export the captions again, as WebVTT or SRT");
        }
        List<Mark> marks = RepeatedWords.once(cues, remarks);
        return new Decoding.Decoded(recording(name, blocks, marks, remarks));
    }

    private static Recording recording(String name, CaptionBlocks blocks, List<Mark> marks, Remarks remarks) {
        double endS = blocks.cues().stream().mapToDouble(CaptionCue::toS).max().orElse(0);
        double[] timesS = endS > 0 ? new double[] {0, endS} : new double[] {0};
        SortedMap<String, Long> counts = new TreeMap<>();
        counts.put("cues", blocks.seen());
        return new Recording(
                        name,
                        Format.CAPTIONS,
                        "",
                        java.util.Optional.empty(),
                        true,
                        blocks.seen(),
                        timesS,
                        List.of(),
                        List.of(),
                        counts,
                        remarks.findings())
                .marking(marks);
    }
}
