package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.recording.Mark;

/// Pauses, laps, presses of the marker button and sessions, as the event, lap and session messages tell them.
final class FitMarks {
    static final int SESSION = 18;
    static final int LAP = 19;
    static final int EVENT = 21;

    /// More than any ride has; a made-up file cannot fill memory with them.
    private static final int MOST = 20_000;

    private static final int TIMER = 0;
    private static final int USER_MARKER = 32;

    private final List<Span> spans = new ArrayList<>();
    private final List<Span> sessions = new ArrayList<>();
    private final LongColumn breaks = new LongColumn();
    private long stoppedNs = SampleTable.UNTIMED;
    private String stoppedBy = "";
    private int laps;

    /// A stretch or an instant on the file's own clock.
    record Span(Mark.Kind kind, long fromNs, long toNs, String text) {}

    List<Span> spans() {
        return spans;
    }

    List<Span> sessions() {
        return sessions;
    }

    int laps() {
        return laps;
    }

    /// The times at which the instrument went on after a stop.
    LongColumn breaks() {
        return breaks;
    }

    void startPart() {
        stoppedNs = SampleTable.UNTIMED;
    }

    /// A part of a chained file that holds samples begins a segment of its own.
    void breakAt(long timeNs) {
        if (breaks.size() < MOST) {
            breaks.add(timeNs);
        }
    }

    /// Takes an event; true when the instrument went on after a stop.
    boolean event(FitMessage message) {
        if (message.timeNs() == SampleTable.UNTIMED) {
            return false;
        }
        int event = message.whole(0, -1);
        if (event == USER_MARKER) {
            add(new Span(Mark.Kind.POINT, message.timeNs(), message.timeNs(), "marker"));
        }
        if (event != TIMER) {
            return false;
        }
        return switch (message.whole(1, -1)) {
            case 0 -> goesOn(message.timeNs());
            case 1, 4, 8, 9 -> {
                if (stoppedNs == SampleTable.UNTIMED) {
                    stoppedNs = message.timeNs();
                    stoppedBy = switch (message.whole(3, -1)) {
                        case 0 -> "by hand";
                        case 1 -> "by itself";
                        default -> "";
                    };
                }
                yield false;
            }
            default -> false;
        };
    }

    private boolean goesOn(long timeNs) {
        if (stoppedNs == SampleTable.UNTIMED) {
            return false;
        }
        if (timeNs >= stoppedNs) {
            add(new Span(Mark.Kind.PAUSE, stoppedNs, timeNs, stoppedBy));
        }
        breakAt(timeNs);
        stoppedNs = SampleTable.UNTIMED;
        return true;
    }

    void lap(FitMessage message) {
        laps++;
        String text = switch (message.whole(24, -1)) {
            case 0 -> "by hand";
            case 1 -> "by time";
            case 2 -> "by distance";
            case 3, 4, 5, 6 -> "by place";
            case 7 -> "end of session";
            case 8 -> "by fitness equipment";
            default -> "";
        };
        span(Mark.Kind.LAP, message, text, spans);
    }

    void session(FitMessage message) {
        span(Mark.Kind.LAP, message, sport(message.whole(5, -1)), sessions);
    }

    private static void span(Mark.Kind kind, FitMessage message, String text, List<Span> into) {
        double startS = message.counted(2, 0);
        double elapsedMs = message.counted(7, 0);
        if (Double.isNaN(startS) || into.size() >= MOST) {
            return;
        }
        long fromNs = ((long) startS) * FitClock.SECOND_NS;
        long toNs = Double.isNaN(elapsedMs) ? message.timeNs() : fromNs + ((long) elapsedMs) * 1_000_000L;
        if (toNs >= fromNs) {
            into.add(new Span(kind, fromNs, toNs, text));
        }
    }

    private void add(Span span) {
        if (spans.size() < MOST) {
            spans.add(span);
        }
    }

    /// Source: the published profile's list of sports, from memory; the ones that a crew with bikes may meet.
    private static String sport(int number) {
        return switch (number) {
            case 1 -> "running";
            case 2 -> "cycling";
            case 3 -> "transition";
            case 4 -> "fitness equipment";
            case 5 -> "swimming";
            case 11 -> "walking";
            case 17 -> "hiking";
            case 18 -> "multisport";
            case 21 -> "e-biking";
            default -> "sport " + number;
        };
    }
}
