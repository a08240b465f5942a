package org.measuredmile.recording.reader;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;

/// Marks by their own times of day, put on a recording's time base once that is known.
final class TimedMarks {
    private static final int MOST = 10_000;
    private static final double NANOS = 1e9;

    private final List<Timed> marks = new ArrayList<>();
    private long leftOut;

    /// A mark between two times, in nanoseconds since 1970.
    private record Timed(Mark.Kind kind, long fromNs, long toNs, String text) {}

    void add(Mark.Kind kind, long fromNs, long toNs, String text) {
        if (marks.size() < MOST) {
            marks.add(new Timed(kind, Math.min(fromNs, toNs), Math.max(fromNs, toNs), Remarks.quoted(text)));
        } else {
            leftOut++;
        }
    }

    /// The recording with these marks; those that lie outside its time are left out, and that is said.
    Recording on(Recording recording) {
        List<Mark> kept = new ArrayList<>();
        Instant start = recording.start().orElse(Instant.EPOCH);
        double spanS = recording.spanS();
        long outside = 0;
        for (Timed mark : marks) {
            double fromS = since(start, mark.fromNs);
            double toS = since(start, mark.toNs);
            if (toS < 0 || fromS > spanS) {
                outside++;
            } else {
                kept.add(new Mark(mark.kind, Math.max(0, fromS), Math.min(spanS, toS), mark.text));
            }
        }
        Recording marked = recording.marking(kept);
        List<Finding> findings = new ArrayList<>();
        if (outside > 0) {
            findings.add(Finding.note(
                    "mark-outside",
                    Place.in(recording.name()),
                    outside + " marks lie outside the time of the recording and were left out"));
        }
        if (leftOut > 0) {
            findings.add(Finding.note(
                    "many-marks",
                    Place.in(recording.name()),
                    "the first " + MOST + " marks were kept; " + leftOut + " more were left out"));
        }
        return findings.isEmpty() ? marked : marked.noting(findings);
    }

    private static double since(Instant start, long timeNs) {
        return (timeNs - Duration.between(Instant.EPOCH, start).toNanos()) / NANOS;
    }
}
