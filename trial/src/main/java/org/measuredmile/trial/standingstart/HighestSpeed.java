package org.measuredmile.trial.standingstart;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.statistics.LineFit;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.RunMean;
import org.measuredmile.trial.TrialInput;

/// The highest speed of starts that were ridden until the speed no longer rose.
///
/// Shape: a run that was let go while it still gained tells nothing of it, and says so.
/// Unit: m/s.
final class HighestSpeed {
    /// A stretch counts as level from so long on, s, and below so much change, m/s²: the limits of a steady speed
    /// in the trial of assist speeds.
    private static final double LEVEL_S = 8;

    private static final double MOST_SLOPE_MPS2 = 0.05;
    /// The highest of several noisy means is a little too high, m/s: a stretch of 8 s is known to 0.016 m/s by
    /// noise that lasts 0.4 s.
    private static final double HIGHEST_OF_SEVERAL_MPS = 0.016;
    /// Near its highest a bike of constant power loses 0.6 m/s to each metre a second of head wind, and 1.1 m/s
    /// to each hundredth of slope: from the derivatives of v·(m·g·(C_rr + θ) + ½·ρ·C_dA·(v + w)²) for 108 kg, 0.009
    /// and 0.6 m² at 9 m/s.
    private static final double PER_WIND = 0.6;

    private static final double PER_SLOPE_MPS = 110;

    private HighestSpeed() {}

    static Optional<Figure> of(TrialInput input, String drive, List<StartRun> runs) {
        var mean = RunMean.of(
                StandingStart.DECLARATION, "standingstart.highest-speed", Variant.of("drive", drive), input.scatter());
        var ways = new TreeSet<String>();
        Optional<TracedStart> first = Optional.empty();
        for (var run : runs) {
            var speed = levelMps(run);
            mean.run(
                    new FigureRun(
                            run.run().id(),
                            run.run().state(),
                            speed.isPresent(),
                            speed.isPresent() ? "" : reason(run),
                            speed),
                    run.run().direction());
            if (speed.isPresent()) {
                ways.add(run.run().direction());
                first = first.or(run::traced);
            }
        }
        if (!mean.hasRuns()) {
            return Optional.empty();
        }
        var start = first.orElseThrow();
        mean.common(StandingStartBudget.scale(
                        input.instrumentOf(start.recording()), start.source().kind(), mean.value()))
                .common(Contribution.typeB("highest of several means", HIGHEST_OF_SEVERAL_MPS))
                .assumed("level road, within 0.3 %");
        if (ways.size() < 2) {
            double windMps = input.readings()
                    .ofDay("wind-speed")
                    .map(one -> one.si() * StandingStartRules.ALONG_SHARE)
                    .orElse(StandingStartRules.UNKNOWN_WIND_MPS);
            mean.common(Contribution.typeB("wind along the road, one way only", PER_WIND * windMps))
                    .common(Contribution.typeB(
                            "slope of the road (taken for level), one way only",
                            PER_SLOPE_MPS * StandingStartRules.LEVEL_SLOPE));
        }
        return Optional.of(mean.figure());
    }

    private static OptionalDouble levelMps(StartRun run) {
        return run.screened().isEmpty()
                ? run.traced().filter(TracedStart::qualifies).stream()
                        .mapToDouble(start -> levelMps(ridden(start)))
                        .filter(speed -> !Double.isNaN(speed))
                        .findFirst()
                : OptionalDouble.empty();
    }

    /// From the start until the speed has clearly fallen: a run ends at its highest sample, which on a level
    /// stretch is one of many.
    private static Channel ridden(TracedStart start) {
        var speed = start.source().channel();
        double highest = 0;
        int last = speed.indexAtOrAfter(start.cutEndS());
        while (last < speed.size() - 1 && speed.value(last) > highest - StandingStartRules.RUN_ENDS_MPS) {
            highest = Math.max(highest, speed.value(last++));
        }
        return speed.between(start.restEndS(), speed.timeS(last));
    }

    /// The highest mean of a level stretch; NaN where none is long and level enough.
    static double levelMps(Channel samples) {
        double highest = Double.NaN;
        for (int i = 0; i < samples.size(); i++) {
            double toS = samples.timeS(i) + LEVEL_S;
            if (toS > samples.timeS(samples.size() - 1) + 1e-9) {
                break;
            }
            var stretch = samples.between(samples.timeS(i), toS);
            var line = LineFit.through(stretch.timesS(), stretch.values());
            double mean = line.at(samples.timeS(i) + LEVEL_S / 2);
            boolean isLevel = Math.abs(line.slope()) < MOST_SLOPE_MPS2 && mean > StandingStartRules.CUT_MPS;
            highest = isLevel && !(mean <= highest) ? mean : highest;
        }
        return highest;
    }

    private static String reason(StartRun run) {
        String reason = run.reason();
        return reason.isEmpty()
                ? "the speed still rose when the run ended, or fell before it was level for 8 s"
                : reason;
    }
}
