package org.measuredmile.recording.reader;

import java.util.List;

/// What the times of a file count from, once the whole of it is known.
///
/// Shape: `absolute` when they count from the end of 1989; `shiftNs` is added to those that count from switching on.
/// `lost` is how many samples are of the other clock than the rest with nothing to bring the two together; they lose
/// their time, and `firstLost` says where the first of them stands.
final class FitEra {
    private final boolean absolute;
    private final boolean correlated;
    private final long shiftNs;
    private long lost;
    private long firstLost;

    private FitEra(boolean absolute, boolean correlated, long shiftNs) {
        this.absolute = absolute;
        this.correlated = correlated;
        this.shiftNs = shiftNs;
    }

    static FitEra of(FitClock clock, List<FitSensors.Stream> streams) {
        long system = 0;
        long dated = 0;
        for (FitSensors.Stream stream : streams) {
            for (int row = 0; row < stream.table().rows(); row++) {
                long timeNs = stream.table().timeNs(row);
                boolean isSystem = FitClock.isSystem(timeNs);
                system += isSystem ? 1 : 0;
                dated += isSystem || timeNs == SampleTable.UNTIMED ? 0 : 1;
            }
        }
        boolean correlated = clock.isCorrelated() && system > 0;
        return new FitEra(correlated || dated > system, correlated, correlated ? clock.correlationNs() : 0);
    }

    /// Brings every sample onto one clock.
    void retime(List<FitSensors.Stream> streams) {
        for (FitSensors.Stream stream : streams) {
            SampleTable table = stream.table();
            for (int row = 0; row < table.rows(); row++) {
                long timeNs = table.timeNs(row);
                long trueNs = trueNs(timeNs);
                if (trueNs != timeNs) {
                    table.retime(row, trueNs);
                }
                if (trueNs == SampleTable.UNTIMED && timeNs != SampleTable.UNTIMED) {
                    firstLost = lost == 0 ? table.line(row) : firstLost;
                    lost++;
                }
            }
        }
    }

    /// A time on the recording's clock; untimed where the two cannot be brought together.
    long trueNs(long timeNs) {
        if (timeNs == SampleTable.UNTIMED) {
            return timeNs;
        }
        if (correlated) {
            return FitClock.isSystem(timeNs) ? timeNs + shiftNs : timeNs;
        }
        return FitClock.isSystem(timeNs) == absolute ? SampleTable.UNTIMED : timeNs;
    }

    boolean isAbsolute() {
        return absolute;
    }

    boolean isCorrelated() {
        return correlated;
    }

    long lost() {
        return lost;
    }

    long firstLost() {
        return firstLost;
    }
}
