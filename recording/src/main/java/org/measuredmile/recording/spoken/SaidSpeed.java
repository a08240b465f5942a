package org.measuredmile.recording.spoken;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.recording.spoken.SpokenReading.Confidence;

/// A speed that was said, and how surely it is one.
///
/// Unit: seconds on the clip's clock, metres per second. `wrongShare` is the probability that it is no speed of this
/// moment: a wish, a memory, a number of something else.
record SaidSpeed(double timeS, double mps, double stepMps, double wrongShare) {
    /// A display rounds, and its wheel size is set by hand: a steady relative error besides the step.
    /// Source: house value, no published source.
    private static final double DISPLAY_SHARE = 0.02;

    private static final double DISPLAY_MPS = 0.15;
    private static final double WRONG = 0.2;
    private static final double WRONG_WHEN_HEDGED = 0.4;
    private static final double WRONG_WHEN_BARE = 0.7;

    /// The speeds among what was said.
    static List<SaidSpeed> of(List<SpokenReading> said) {
        List<SaidSpeed> speeds = new ArrayList<>();
        Optional<Unit> unit =
                said.stream().filter(SpokenReading::isSpeed).findFirst().flatMap(SpokenReading::unit);
        for (SpokenReading one : said) {
            if (one.isSpeed()) {
                unit = one.unit();
                boolean hedged = one.confidence() == Confidence.HEDGED;
                speeds.add(speed(one, one.value(), unit.orElseThrow(), hedged ? WRONG_WHEN_HEDGED : WRONG));
            } else if (one.kind().isEmpty() && unit.isPresent() && one.value() >= 0) {
                speeds.add(speed(one, unit.get().toSi(one.value()), unit.get(), WRONG_WHEN_BARE));
            }
        }
        return speeds;
    }

    private static SaidSpeed speed(SpokenReading one, double mps, Unit unit, double wrongShare) {
        int point = one.written().indexOf('.');
        boolean tenths = point >= 0;
        return new SaidSpeed(one.timeS(), mps, unit.differenceToSi(tenths ? 0.1 : 1), wrongShare);
    }

    /// The standard deviation of what was said about what the recording has at the same moment.
    double sigmaMps(SpeedSource speed) {
        double display = DISPLAY_SHARE * mps;
        return Math.sqrt(stepMps * stepMps / 12
                + display * display
                + DISPLAY_MPS * DISPLAY_MPS
                + speed.sigmaMps() * speed.sigmaMps());
    }
}
