package org.measuredmile.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/// Asks the positions of a recording whether a bike can have been there: jumps, positions that stand still while the
/// speed goes on, heights that are missing, and way that is only the wander of a receiver at rest.
///
/// Limits are common practice, no source; they were set so that ordinary rides, walks and drives give nothing.
final class PositionChecks {
    private static final double JUMP_FLOOR_MPS = 15;
    private static final double JUMP_FLOOR_M = 25;
    private static final double JUMP_TIMES = 3;
    private static final int NEIGHBOURS = 5;
    private static final double SPEED_LOOK_S = 2;
    private static final double FROZEN_S = 8;
    private static final int FEWEST_FROZEN = 5;
    private static final double SURELY_MOVING_MPS = 2;
    private static final double COMPLETE = 0.95;
    private static final double JITTER_M = 10;
    private static final double JITTER_SHARE = 0.01;
    private static final double CLIMB_FREE_M = 5000;

    private final Recording recording;
    private final Fixes fixes;
    private final Optional<Channel> speed;

    private PositionChecks(Recording recording, Fixes fixes) {
        this.recording = recording;
        this.fixes = fixes;
        this.speed = Travel.speed(recording);
    }

    static List<Finding> of(Recording recording, Fixes fixes, Travel travel) {
        if (fixes.size() == 0) {
            return List.of();
        }
        PositionChecks checks = new PositionChecks(recording, fixes);
        List<Finding> findings = new ArrayList<>();
        checks.jumps().ifPresent(findings::add);
        checks.frozen().ifPresent(findings::add);
        checks.elevation().ifPresent(findings::add);
        checks.level(travel).ifPresent(findings::add);
        checks.jitter(travel).ifPresent(findings::add);
        return findings;
    }

    private Place at(double timeS) {
        return Place.atTime(recording.name(), timeS);
    }

    private Optional<Finding> jumps() {
        int jumps = 0;
        int first = -1;
        int largest = -1;
        int before = -2;
        for (int i = 1; i < fixes.size(); i++) {
            if (isJump(i)) {
                // There and back again is one jump.
                jumps += before == i - 1 ? 0 : 1;
                first = first < 0 ? i : first;
                largest = largest < 0 || fixes.nearlyM(i - 1, i) > fixes.nearlyM(largest - 1, largest) ? i : largest;
                before = i;
            }
        }
        return first < 0
                ? Optional.empty()
                : Optional.of(Finding.warning(
                        "position-jump",
                        at(fixes.timesS()[first]),
                        String.format(
                                Locale.ROOT,
                                "%s farther than anything there moves: the largest %.0f m in %.1f s at %.1f s, "
                                        + "where its neighbours go %.1f m/s",
                                jumps == 1 ? "one position jumps" : jumps + " positions jump",
                                fixes.nearlyM(largest - 1, largest),
                                fixes.timesS()[largest] - fixes.timesS()[largest - 1],
                                fixes.timesS()[largest],
                                around(largest)),
                        "leave the place out of any run, or use the speed instead of the track"));
    }

    private boolean isJump(int i) {
        double stepM = fixes.nearlyM(i - 1, i);
        double stepS = fixes.timesS()[i] - fixes.timesS()[i - 1];
        if (stepM < JUMP_FLOOR_M || stepM / stepS < JUMP_FLOOR_MPS) {
            return false;
        }
        boolean beyondNeighbours = stepM / stepS > JUMP_FLOOR_MPS + JUMP_TIMES * around(i);
        return beyondNeighbours && stepM > JUMP_FLOOR_M + 1.5 * stepS * fastest(i);
    }

    /// The middle speed of the steps around one, that one left out.
    private double around(int i) {
        int from = Math.max(1, i - NEIGHBOURS);
        int to = Math.min(fixes.size() - 1, i + NEIGHBOURS);
        double[] steps = new double[to - from];
        int size = 0;
        for (int j = from; j <= to; j++) {
            if (j != i) {
                steps[size++] = fixes.stepMps(j);
            }
        }
        Arrays.sort(steps);
        return size == 0 ? 0 : steps[size / 2];
    }

    /// The largest speed that the recording's own channel shows about a step; 0 without one.
    private double fastest(int i) {
        double largest = 0;
        if (speed.isPresent()) {
            int from = speed.get().indexAtOrAfter(fixes.timesS()[i - 1] - SPEED_LOOK_S);
            double toS = fixes.timesS()[i] + SPEED_LOOK_S;
            for (int j = from; j < speed.get().size() && speed.get().timeS(j) <= toS; j++) {
                largest = Math.max(largest, speed.get().value(j));
            }
        }
        return largest;
    }

    /// The longest stretch of one and the same position through which the recording's own speed says it moved.
    private Optional<Finding> frozen() {
        if (speed.isEmpty()) {
            return Optional.empty();
        }
        Channel moving = speed.get();
        double longestS = 0;
        double longestFromS = 0;
        int from = 0;
        int j = 0;
        for (int i = 1; i < fixes.size(); i++) {
            while (j + 1 < moving.size() && moving.timeS(j + 1) <= fixes.timesS()[i]) {
                j++;
            }
            if (!fixes.same(from, i) || moving.value(j) < SURELY_MOVING_MPS) {
                from = i;
            }
            double heldS = fixes.timesS()[i] - fixes.timesS()[from];
            if (i - from >= FEWEST_FROZEN && heldS > longestS) {
                longestS = heldS;
                longestFromS = fixes.timesS()[from];
            }
        }
        return longestS < FROZEN_S
                ? Optional.empty()
                : Optional.of(Finding.warning(
                        "frozen-position",
                        at(longestFromS),
                        String.format(
                                Locale.ROOT,
                                "the position keeps one value for up to %.0f s while \"%s\" says it moved: "
                                        + "the receiver had lost its fix",
                                longestS,
                                moving.name()),
                        "take no distance or direction from such stretches"));
    }

    private Optional<Finding> elevation() {
        int heights = recording.channel(ChannelKind.ALTITUDE).map(Channel::size).orElse(0);
        if (heights >= COMPLETE * fixes.size()) {
            return Optional.empty();
        }
        String said = heights == 0
                ? "no position has an elevation: ascent and grade can't be told"
                : fixes.size() - heights + " of " + fixes.size() + " positions have no elevation";
        return Optional.of(Finding.note("missing-elevation", Place.in(recording.name()), said));
    }

    /// A height that never changes over kilometres is a constant that a program wrote.
    private Optional<Finding> level(Travel travel) {
        Optional<Channel> altitude = recording.channel(ChannelKind.ALTITUDE);
        boolean far = travel.riddenTrackM().orElse(0) > CLIMB_FREE_M;
        if (altitude.isEmpty() || !far || altitude.get().size() < fixes.size() / 2) {
            return Optional.empty();
        }
        double[] heightsM = altitude.get().values();
        double same = heightsM[0];
        return Arrays.stream(heightsM).anyMatch(heightM -> heightM != same)
                ? Optional.empty()
                : Optional.of(Finding.warning(
                        "frozen-sensor",
                        Place.in(recording.name()),
                        String.format(
                                Locale.ROOT,
                                "\"%s\" is %.1f m all the way: it was not measured",
                                altitude.get().name(),
                                same),
                        "take no ascent or grade from this file"));
    }

    private Optional<Finding> jitter(Travel travel) {
        double trackM = travel.byTrackM().orElse(0);
        boolean much = travel.jitterM() > JITTER_M && travel.jitterM() > JITTER_SHARE * trackM;
        return much
                ? Optional.of(Finding.note(
                        "standing-jitter",
                        Place.in(recording.name()),
                        String.format(
                                Locale.ROOT,
                                "%.0f m of the track's %.0f m came while it stood: the wander of the fixes, "
                                        + "not way; no distance comes of it",
                                travel.jitterM(),
                                trackM)))
                : Optional.empty();
    }
}
