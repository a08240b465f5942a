package org.measuredmile.recording;

import java.util.BitSet;
import java.util.Optional;

/// Which positions were recorded while the instrument stood: their wander is noise, not way.
///
/// By the recording's own speed where it has one at most fixes; else a fix stands when all fixes within five seconds of
/// it (two at the least on either side) lie within four metres of it, which whoever moves at 0.8 m/s has left.
/// Common practice, no source.
record Standing(BitSet fixes) {
    static final double MOVING_MPS = 0.5;
    private static final double WINDOW_S = 5;
    private static final double RADIUS_M = 4;
    private static final int FEWEST = 2;
    private static final int PROBES = 8;

    static Standing of(Fixes fixes, Optional<Channel> speed) {
        BitSet standing = new BitSet(fixes.size());
        if (speed.isPresent() && 2 * speed.get().size() >= fixes.size()) {
            bySpeed(fixes, speed.get(), standing);
            return new Standing(standing);
        }
        for (int i = 0; i < fixes.size(); i++) {
            if (stays(fixes, i, 1) && stays(fixes, i, -1)) {
                standing.set(i);
            }
        }
        return new Standing(standing);
    }

    /// Whether the step that ends at a fix is none.
    boolean isStepOf(int i) {
        return fixes.get(i) && fixes.get(i - 1);
    }

    private static void bySpeed(Fixes fixes, Channel speed, BitSet standing) {
        int j = 0;
        for (int i = 0; i < fixes.size(); i++) {
            while (j + 1 < speed.size() && speed.timeS(j + 1) <= fixes.timesS()[i]) {
                j++;
            }
            double awayS = Math.abs(speed.timeS(j) - fixes.timesS()[i]);
            standing.set(i, awayS <= WINDOW_S && speed.value(j) < MOVING_MPS);
        }
    }

    /// Whether the fixes on one side stay near; the farthest in time is asked first, for one that moves is settled
    /// by it.
    private static boolean stays(Fixes fixes, int i, int way) {
        int last = i;
        int next = i + way;
        while (next >= 0
                && next < fixes.size()
                && (Math.abs(next - i) <= FEWEST || Math.abs(fixes.timesS()[next] - fixes.timesS()[i]) <= WINDOW_S)) {
            last = next;
            next += way;
        }
        int span = Math.abs(last - i);
        int stride = Math.max(1, span / PROBES);
        for (int off = span; off > 0; off -= stride) {
            if (fixes.nearlyM(i, i + way * off) > RADIUS_M) {
                return false;
            }
        }
        return true;
    }
}
