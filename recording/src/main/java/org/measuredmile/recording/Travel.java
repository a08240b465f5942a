package org.measuredmile.recording;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;

/// How far and how long a recording went, by each way of telling that it offers.
///
/// Unit: metres and seconds. `bySpeedM` integrates speed by trapezoids, `byInstrumentM` sums the rises of the
/// instrument's own distance, `byTrackM` sums geodesics between timed positions; none of them bridges a gap except the
/// instrument's distance, which counts on. `jitterM` is the part of `byTrackM` that came while standing. Where there
/// are
/// positions, a receiver's speed under half a metre a second is its noise and counts nothing.
record Travel(
        double gapLimitS,
        OptionalDouble ridingS,
        OptionalDouble bySpeedM,
        OptionalDouble byInstrumentM,
        OptionalDouble byTrackM,
        double jitterM) {
    private static final double MOVING_MPS = Standing.MOVING_MPS;
    private static final double SHORTEST_GAP_S = 0.1;

    /// Up to here a step is bridged by a trapezoid even where it counts as a gap.
    private static final double BRIDGED_S = 3;

    static Travel of(Recording recording) {
        return of(recording, Fixes.of(recording));
    }

    static Travel of(Recording recording, Fixes fixes) {
        double gapLimitS = gapLimitS(recording.timesS());
        Optional<Channel> speed = speed(recording);
        Steps steps = new Steps(recording.segments(), Math.max(gapLimitS, BRIDGED_S));
        boolean noisy = fixes.size() > 0
                && speed.filter(one -> one.kind() == ChannelKind.SPEED).isPresent();
        Sums bySpeed = speed.map(channel -> bySpeed(channel, steps, noisy)).orElse(Sums.NONE);
        Sums byTrack = fixes.size() > 0 ? byTrack(fixes, speed, steps) : Sums.NONE;
        return new Travel(
                gapLimitS,
                speed.isPresent() ? bySpeed.ridingS : byTrack.ridingS,
                bySpeed.wayM,
                recording.channel(ChannelKind.DISTANCE).map(Travel::rises).orElse(OptionalDouble.empty()),
                byTrack.wayM,
                byTrack.jitterM);
    }

    private record Sums(OptionalDouble wayM, OptionalDouble ridingS, double jitterM) {
        private static final Sums NONE = new Sums(OptionalDouble.empty(), OptionalDouble.empty(), 0);
    }

    /// Which steps between samples count: short ones that do not leave a segment.
    record Steps(java.util.List<Segment> segments, double longestS) {
        boolean count(double fromS, double toS) {
            return toS - fromS <= longestS && segmentOf(fromS) == segmentOf(toS);
        }

        boolean leave(double fromS, double toS) {
            return segmentOf(fromS) != segmentOf(toS);
        }

        private int segmentOf(double timeS) {
            int low = 0;
            int high = segments.size();
            while (low < high) {
                int middle = (low + high) >>> 1;
                if (segments.get(middle).fromS() <= timeS) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            return low;
        }
    }

    /// The way by any one speed of a recording.
    static OptionalDouble along(Channel speed, Recording recording) {
        double longestS = Math.max(gapLimitS(recording.timesS()), BRIDGED_S);
        return bySpeed(speed, new Steps(recording.segments(), longestS), false).wayM;
    }

    static Optional<Channel> speed(Recording recording) {
        return recording.channel(ChannelKind.WHEEL_SPEED).or(() -> recording.channel(ChannelKind.SPEED));
    }

    /// The best distance that the recording offers: the instrument's own, else by speed, else by track without what
    /// came while standing.
    OptionalDouble bestM() {
        return byInstrumentM.isPresent() ? byInstrumentM : bySpeedM.isPresent() ? bySpeedM : riddenTrackM();
    }

    /// The track's length without what came while standing.
    OptionalDouble riddenTrackM() {
        return byTrackM.isPresent() ? OptionalDouble.of(byTrackM.getAsDouble() - jitterM) : byTrackM;
    }

    /// What `bestM` is by, in words.
    String bestSource() {
        if (byInstrumentM.isPresent()) {
            return "the instrument's own distance";
        }
        if (bySpeedM.isPresent()) {
            return "speed integrated over time";
        }
        return byTrackM.isPresent() ? "positions, without those at rest" : "";
    }

    /// The longest step that still belongs to the recording's rhythm.
    private static double gapLimitS(double[] timesS) {
        if (timesS.length < 2) {
            return SHORTEST_GAP_S;
        }
        double[] steps = new double[timesS.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = timesS[i + 1] - timesS[i];
        }
        Arrays.sort(steps);
        double middle = steps[steps.length / 2];
        double upper = steps[(int) ((steps.length - 1) * 0.9)];
        double uneven = upper > 1.4 * middle ? 3 * upper : 0;
        return Math.max(Math.max(1.5 * middle, uneven), SHORTEST_GAP_S);
    }

    private static Sums bySpeed(Channel speed, Steps steps, boolean noisy) {
        double wayM = 0;
        double ridingS = 0;
        for (int i = 1; i < speed.size(); i++) {
            double stepS = speed.timeS(i) - speed.timeS(i - 1);
            double meanMps = (speed.value(i) + speed.value(i - 1)) / 2;
            if (steps.count(speed.timeS(i - 1), speed.timeS(i))) {
                wayM += noisy && meanMps < MOVING_MPS ? 0 : meanMps * stepS;
                ridingS += meanMps > MOVING_MPS ? stepS : 0;
            }
        }
        return new Sums(OptionalDouble.of(wayM), OptionalDouble.of(ridingS), 0);
    }

    private static Sums byTrack(Fixes fixes, Optional<Channel> speed, Steps steps) {
        Standing standing = Standing.of(fixes, speed);
        double wayM = 0;
        double ridingS = 0;
        double jitterM = 0;
        for (int i = 1; i < fixes.size(); i++) {
            double fromS = fixes.timesS()[i - 1];
            double toS = fixes.timesS()[i];
            if (steps.count(fromS, toS)) {
                double stepM = fixes.geodesicM(i - 1, i);
                boolean stood = standing.isStepOf(i);
                wayM += stepM;
                jitterM += stood ? stepM : 0;
                ridingS += !stood && stepM > MOVING_MPS * (toS - fromS) ? toS - fromS : 0;
            }
        }
        return new Sums(OptionalDouble.of(wayM), OptionalDouble.of(ridingS), jitterM);
    }

    private static OptionalDouble rises(Channel distance) {
        double sumM = 0;
        for (int i = 1; i < distance.size(); i++) {
            sumM += Math.max(0, distance.value(i) - distance.value(i - 1));
        }
        return OptionalDouble.of(sumM);
    }
}
