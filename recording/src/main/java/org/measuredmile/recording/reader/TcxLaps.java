package org.measuredmile.recording.reader;

import java.util.Locale;
import java.util.Optional;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;

/// The laps of a training file: each from its first to its last sample, with the instrument's own totals in words.
///
/// Totals are never added to anything: the points that they sum stand in the file as well.
final class TcxLaps {
    /// Times are rounded to seconds by some instruments, and a lap ends at its last sample here: common practice.
    private static final double SLACK_S = 5;

    private static final double SLACK_SHARE = 0.01;

    private final TimedMarks marks;
    private boolean open;
    private long fromNs;
    private long toNs;
    private boolean anySample;
    private String timeText = "";
    private String distanceText = "";
    private double sumS;

    TcxLaps(TimedMarks marks) {
        this.marks = marks;
    }

    void open() {
        close();
        open = true;
        anySample = false;
        timeText = "";
        distanceText = "";
    }

    /// A total of the lap, by the element that holds it.
    void total(String element, XmlText text) {
        double value = text.number();
        if (Double.isNaN(value)) {
            return;
        }
        if (element.equals("TotalTimeSeconds")) {
            timeText = text.toString();
            sumS += value;
        } else {
            distanceText = text.toString();
        }
    }

    /// A sample within the lap that is open.
    void sample(long timeNs) {
        fromNs = anySample ? Math.min(fromNs, timeNs) : timeNs;
        toNs = anySample ? Math.max(toNs, timeNs) : timeNs;
        anySample = true;
    }

    void close() {
        if (open && anySample) {
            marks.add(Mark.Kind.LAP, fromNs, toNs, text());
        }
        open = false;
    }

    private String text() {
        String time = timeText.isEmpty() ? "" : timeText + " s";
        String way = distanceText.isEmpty() ? "" : distanceText + " m";
        return time.isEmpty() || way.isEmpty() ? time + way : time + ", " + way;
    }

    /// That the laps claim more time than the points cover: points are missing, or totals were repeated.
    Optional<Finding> disagreement(Recording recording) {
        double spanS = recording.spanS();
        if (sumS <= spanS * (1 + SLACK_SHARE) + SLACK_S) {
            return Optional.empty();
        }
        return Optional.of(Finding.warning(
                "lap-totals",
                Place.in(recording.name()),
                String.format(
                        Locale.ROOT,
                        "the laps add up to %.1f s, the points cover %.1f s: points are missing, or each lap repeats "
                                + "the whole; nothing is computed from lap totals",
                        sumS,
                        spanS),
                "export the whole activity when the rest is needed"));
    }
}
