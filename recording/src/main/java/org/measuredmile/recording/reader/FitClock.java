package org.measuredmile.recording.reader;

import java.util.OptionalInt;

/// The clock of a FIT file: seconds since the end of 1989, five bits of them in compressed headers, and seconds since
/// the instrument was switched on where it did not know better.
///
/// Unit: nanoseconds since 1989-12-31T00:00:00Z, or since switching on while below 0x10000000 s.
/// Source: the published protocol's date_time (values below 0x10000000 count from switching on), its compressed time
/// stamp header, and its time-correlation message, from memory.
final class FitClock {
    /// 1989-12-31T00:00:00Z, in seconds since 1970.
    static final long EPOCH_S = 631_065_600L;

    static final long SECOND_NS = 1_000_000_000L;

    private static final long SYSTEM_NS = 0x1000_0000L * SECOND_NS;
    private static final long NO_STAMP = 0xFFFF_FFFFL;
    private static final int FIVE_BITS = 0x1F;
    private static final int FARTHEST_ZONE_S = 14 * 3600;
    private static final double A_SECOND_IN_FRACTIONS = 32_768;

    private long lastS = -1;
    private boolean correlated;
    private long correlationNs;
    private OptionalInt localOffsetS = OptionalInt.empty();

    void startPart() {
        lastS = -1;
    }

    /// The time of a whole stamp; untimed where it says that there is none.
    long stamp(long seconds) {
        if (seconds == NO_STAMP) {
            return SampleTable.UNTIMED;
        }
        lastS = seconds;
        return seconds * SECOND_NS;
    }

    /// The time of a compressed header: the first at or after the last one whose lowest five bits are these.
    long compressed(int bits) {
        if (lastS < 0) {
            return SampleTable.UNTIMED;
        }
        lastS += (bits - lastS) & FIVE_BITS;
        return lastS * SECOND_NS;
    }

    /// Takes what a time-correlation message says of the two clocks.
    void correlate(FitMessage message) {
        double systemS = message.counted(1, 0);
        long utcNs = message.timeNs();
        if (!correlated && !Double.isNaN(systemS) && utcNs >= SYSTEM_NS && systemS < SYSTEM_NS / SECOND_NS) {
            correlated = true;
            correlationNs = utcNs + partNs(message, 0, 4) - Math.round(systemS * SECOND_NS) - partNs(message, 2, 5);
        }
        local(message.number(3), utcNs);
    }

    private static long partNs(FitMessage message, int fraction, int millisecond) {
        double ms = message.counted(millisecond, 0);
        if (!Double.isNaN(ms)) {
            return Math.round(ms * 1_000_000L);
        }
        double part = message.counted(fraction, 0);
        return Double.isNaN(part) ? 0 : Math.round(part / A_SECOND_IN_FRACTIONS * SECOND_NS);
    }

    /// Takes a local time beside a time in UTC, where the two can be of one instant.
    void local(double localS, long utcNs) {
        if (Double.isNaN(localS) || utcNs == SampleTable.UNTIMED) {
            return;
        }
        double offsetS = localS - Math.floorDiv(utcNs, SECOND_NS);
        if (Math.abs(offsetS) <= FARTHEST_ZONE_S) {
            localOffsetS = OptionalInt.of((int) offsetS);
        }
    }

    /// How far the instrument's local time is ahead of UTC, in seconds.
    OptionalInt localOffsetS() {
        return localOffsetS;
    }

    boolean isCorrelated() {
        return correlated;
    }

    long correlationNs() {
        return correlationNs;
    }

    /// Whether a time counts from switching on and not from 1989.
    static boolean isSystem(long timeNs) {
        return timeNs != SampleTable.UNTIMED && timeNs < SYSTEM_NS;
    }
}
