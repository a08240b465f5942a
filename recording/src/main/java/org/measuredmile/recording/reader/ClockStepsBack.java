package org.measuredmile.recording.reader;

import java.util.Locale;
import java.util.Optional;
import org.measuredmile.recording.ClockCause;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;

/// Notices a clock that was set back while it ran: from a row on, times go on from an earlier one.
///
/// A single row that is early is a stray sample and no step; blocks of a logger's memory in the wrong order are told
/// apart before this is asked.
final class ClockStepsBack {
    /// So many rows have to go on from the earlier time.
    private static final int GO_ON = 3;

    private static final double NANOS = 1e9;

    private ClockStepsBack() {}

    static Optional<Finding> of(SampleTable table, String source) {
        int steps = 0;
        int first = -1;
        long firstNs = 0;
        long beforeNs = SampleTable.UNTIMED;
        for (int row = 0; row < table.rows(); row++) {
            long timeNs = table.timeNs(row);
            if (timeNs == SampleTable.UNTIMED) {
                continue;
            }
            if (beforeNs != SampleTable.UNTIMED && timeNs < beforeNs && goesOn(table, row, beforeNs)) {
                steps++;
                firstNs = first < 0 ? timeNs - beforeNs : firstNs;
                first = first < 0 ? row : first;
            }
            beforeNs = timeNs;
        }
        return first < 0
                ? Optional.empty()
                : Optional.of(finding(Place.atLine(source, table.line(first)), steps, firstNs / NANOS));
    }

    private static boolean goesOn(SampleTable table, int from, long beforeNs) {
        long lastNs = table.timeNs(from);
        int seen = 0;
        for (int row = from + 1; row < table.rows() && seen < GO_ON; row++) {
            long timeNs = table.timeNs(row);
            if (timeNs != SampleTable.UNTIMED) {
                if (timeNs < lastNs || (seen == 0 && timeNs >= beforeNs)) {
                    return false;
                }
                lastNs = timeNs;
                seen++;
            }
        }
        return seen == GO_ON;
    }

    private static Finding finding(Place place, int steps, double byS) {
        return Finding.warning(
                "clock-step",
                place,
                String.format(
                        Locale.ROOT,
                        "the clock steps back %s by %.1f s and goes on from there%s",
                        steps == 1 ? "once," : steps + " times, first",
                        -byS,
                        ClockCause.of(byS).map(cause -> ": " + cause).orElse("")),
                "cut the recording there, and state the offset of the later part in recordings.csv");
    }
}
