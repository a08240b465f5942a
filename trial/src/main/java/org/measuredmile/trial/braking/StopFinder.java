package org.measuredmile.trial.braking;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.statistics.LineFit;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.motion.Accelerations;
import org.measuredmile.recording.motion.InertialStop;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.recording.motion.Stops;
import org.measuredmile.recording.motion.Stops.Stop;
import org.measuredmile.trial.SpeedFinder;
import org.measuredmile.trial.TrialInput;

/// Finds every candidate stop of a recording, and says of each whether it can carry a braking distance.
///
/// Shape: a recording in, candidates in order of time out; each that does not qualify has its own reasons with
/// limit and value. Nothing is fitted that a plain look refuses.
final class StopFinder {
    private final Recording recording;
    private final SpeedSource source;
    private final double stepS;

    private final Optional<Beside> beside;

    private StopFinder(Recording recording, SpeedSource source, Optional<Beside> beside) {
        this.recording = recording;
        this.source = source;
        this.beside = beside;
        this.stepS = source.channel().medianStepS();
    }

    /// An accelerometer's readings, and whether they share the clock of the speed and its lever.
    record Beside(Accelerations accelerations, boolean oneClock) {}

    /// How a day's recordings are searched.
    static SpeedFinder<TracedStop> in(TrialInput input) {
        return new SpeedFinder<>(
                "stop",
                (recording, source) -> find(recording, source, beside(input, recording)),
                source -> isTooCoarse(source) ? Optional.of(tooCoarse(source)) : Optional.empty(),
                "",
                "use the tape reading, or a logger that writes speed");
    }

    /// The accelerometer in the same recording, or else in another of the day that says when it began and
    /// covers the same time.
    private static Optional<Beside> beside(TrialInput input, Recording recording) {
        var own = Accelerations.of(recording);
        if (own.isPresent()) {
            return Optional.of(new Beside(own.get(), true));
        }
        double fromS = recording.timesS().length == 0 ? 0 : recording.timesS()[0];
        return input.recordings().values().stream()
                .filter(other -> !other.name().equals(recording.name()))
                .flatMap(other -> Accelerations.of(other, recording).stream())
                .filter(one -> one.between(fromS, fromS + recording.spanS()).size() > one.size() / 2)
                .findFirst()
                .map(one -> new Beside(one, false));
    }

    static List<TracedStop> find(Recording recording, SpeedSource source, Optional<Beside> beside) {
        var finder = new StopFinder(recording, source, beside);
        return Stops.find(source.channel()).stream().map(finder::judged).toList();
    }

    /// Whether a source is sampled often enough at all.
    static boolean isTooCoarse(SpeedSource source) {
        return !(source.channel().medianStepS() <= BrakingRules.RATE_SLACK / BrakingRules.LEAST_RATE_HZ);
    }

    static String tooCoarse(SpeedSource source) {
        return "sampled every " + BrakingWords.seconds(source.channel().medianStepS())
                + ": too coarse for a stopping distance; use the tape reading or a logger of 10 Hz or more";
    }

    private TracedStop judged(Stop stop) {
        var reasons = plainFaults(stop);
        var samples = source.channel()
                .between(
                        stop.onsetS() - BrakingRules.CUT_BEFORE_S,
                        Math.min(stop.endS(), stop.restS() + BrakingRules.CUT_AFTER_S));
        Optional<StopFit.Fitted> fitted = Optional.empty();
        if (reasons.isEmpty()) {
            var priors = source.kind() == SpeedSource.Kind.WHEEL ? BrakingRules.WHEEL : BrakingRules.RECEIVER;
            switch (StopFit.fit(samples, stop, sigma(stop), priors)) {
                case StopFit.Result.Good(var good) -> {
                    reasons.addAll(fitFaults(good));
                    fitted = Optional.of(good);
                }
                case StopFit.Result.Bad(var why) -> reasons.add(why);
            }
        }
        Optional<InertialStop> inertial = reasons.isEmpty() ? inertial(stop) : Optional.empty();
        boolean oneClock = beside.map(Beside::oneClock).orElse(false);
        return new TracedStop(recording, source, stop, samples, fitted, inertial, oneClock, lever(stop), reasons);
    }

    /// A wheel's own speed needs no accelerometer beside it.
    private Optional<InertialStop> inertial(Stop stop) {
        return source.kind() == SpeedSource.Kind.RECEIVER
                ? beside.map(one -> InertialStop.of(one.accelerations(), source.channel(), sigma(stop), stop))
                : Optional.empty();
    }

    private List<String> plainFaults(Stop stop) {
        var faults = new ArrayList<String>();
        if (isTooCoarse(source)) {
            faults.add(tooCoarse(source));
        }
        if (source.kind() == SpeedSource.Kind.POSITIONS) {
            faults.add("no speed channel: steps between positions are too noisy for a stopping distance");
        }
        if (outsideEveryWindow(stop.entryMps())) {
            faults.add("entry speed " + windows(stop.entryMps()));
        }
        restFault(stop).ifPresent(faults::add);
        steadyFault(stop).ifPresent(faults::add);
        if (stop.roughDecelerationMps2() < BrakingRules.LEAST_DECELERATION_MPS2) {
            faults.add("mean deceleration " + BrakingWords.mps2(stop.roughDecelerationMps2())
                    + ": not a hard stop (at least "
                    + BrakingWords.mps2(BrakingRules.LEAST_DECELERATION_MPS2) + ")");
        }
        if (faults.isEmpty()) {
            samplingFault(stop).ifPresent(faults::add);
        }
        return faults;
    }

    /// The window of the rough entry speed is widened a little: the fit's own speed decides.
    private static boolean outsideEveryWindow(double entryMps) {
        for (var nominal : BrakingRules.Nominal.values()) {
            var window = nominal.window();
            if (entryMps >= window.low() - 0.2 && entryMps <= window.high() + 0.2) {
                return false;
            }
        }
        return true;
    }

    /// An entry speed against every window, in words.
    static String windows(double entryMps) {
        var words = new StringBuilder(BrakingWords.kmh(entryMps) + " is outside");
        String joint = " ";
        for (var nominal : BrakingRules.Nominal.values()) {
            words.append(joint).append(window(nominal));
            joint = " and ";
        }
        return words.toString();
    }

    static String window(BrakingRules.Nominal nominal) {
        Interval window = nominal.window();
        return BrakingWords.kmh(window.low()).replace(" km/h", "") + " to " + BrakingWords.kmh(window.high()) + " ("
                + nominal.words() + " ± 1.5 km/h)";
    }

    private static Optional<String> restFault(Stop stop) {
        if (!stop.cameToRest()) {
            return Optional.of("never at rest: lowest speed " + BrakingWords.kmh(stop.lowestMps()) + ", at most "
                    + BrakingWords.kmh(Stops.REST_MPS) + " counts as standing");
        }
        return stop.restForS() >= BrakingRules.REST_S
                ? Optional.empty()
                : Optional.of("at rest for " + BrakingWords.seconds(stop.restForS()) + " after it, at least "
                        + BrakingWords.seconds(BrakingRules.REST_S) + " needed");
    }

    private Optional<String> steadyFault(Stop stop) {
        double from = stop.onsetS() - BrakingRules.STEADY_S - stepS;
        var before = source.channel().between(from, stop.onsetS());
        double span = before.size() < 2 ? 0 : before.timeS(before.size() - 1) - before.timeS(0);
        if (span < BrakingRules.STEADY_S - stepS / 2) {
            return Optional.of("only " + BrakingWords.seconds(span) + " recorded before it, at least "
                    + BrakingWords.seconds(BrakingRules.STEADY_S) + " of steady riding needed");
        }
        // The last three tenths of a second may already show the brakes through the receiver's filter.
        var early = source.channel().between(from - 0.3, stop.onsetS() - 0.2);
        double drift = early.size() < 3
                ? 0
                : LineFit.through(early.timesS(), early.values()).slope();
        return Math.abs(drift) <= 2 * BrakingRules.STEADY_MPS2 ? Optional.empty() : Optional.of(unsteady(drift));
    }

    private static String unsteady(double drift) {
        return "entry not steady: speed changing by " + BrakingWords.mps2(drift) + " before it, at most ±"
                + BrakingWords.mps2(BrakingRules.STEADY_MPS2) + " allowed";
    }

    private Optional<String> samplingFault(Stop stop) {
        var braking = source.channel().between(stop.onsetS() - 0.5, stop.restS());
        int inside = 0;
        int held = 1;
        int mostHeld = 1;
        for (int i = 0; i < braking.size(); i++) {
            boolean moving = braking.value(i) < 0.9 * stop.entryMps() && braking.value(i) > Stops.REST_MPS;
            inside += moving ? 1 : 0;
            held = i > 0 && moving && braking.value(i) == braking.value(i - 1) ? held + 1 : 1;
            mostHeld = Math.max(mostHeld, held);
            double gapS = i == 0 ? 0 : braking.timeS(i) - braking.timeS(i - 1);
            if (gapS > BrakingRules.GAP_STEPS * stepS) {
                return Optional.of("gap of " + BrakingWords.seconds(gapS) + " in the braking phase, samples are "
                        + BrakingWords.seconds(stepS) + " apart");
            }
        }
        if (mostHeld >= BrakingRules.HELD_SAMPLES) {
            return Optional.of(
                    "the receiver holds its last value: " + mostHeld + " equal speeds in a row while braking");
        }
        return inside >= BrakingRules.LEAST_SAMPLES
                ? Optional.empty()
                : Optional.of(
                        "only " + inside + " samples in the stop, at least " + BrakingRules.LEAST_SAMPLES + " needed");
    }

    private static List<String> fitFaults(StopFit.Fitted fit) {
        var faults = new ArrayList<String>();
        double entry = fit.curve().entryMps();
        if (!BrakingRules.Nominal.TWENTY_MPH.window().contains(entry)
                && !BrakingRules.Nominal.TWENTY_FIVE_KMH.window().contains(entry)) {
            faults.add("entry speed " + windows(entry));
        }
        double drift = fit.curve().driftMps2();
        if (Math.abs(drift) > BrakingRules.STEADY_MPS2) {
            faults.add(unsteady(drift));
        }
        double chiSquare = fit.settled().reducedChiSquare();
        if (chiSquare > BrakingRules.MOST_CHI_SQUARE) {
            faults.add("not one brake application: reduced χ² of the fit " + BrakingWords.number(chiSquare)
                    + ", at most " + BrakingWords.number(BrakingRules.MOST_CHI_SQUARE));
        }
        for (String name : fit.settled().onBound()) {
            // A filter at its low bound is a receiver without one; nothing is wrong with that.
            if (!name.equals("receiver's filter") || fit.filterS() > 0.5) {
                faults.add(name + " ended on the bound of the fit");
            }
        }
        return faults;
    }

    /// The usual noise of the source, or that of the steady stretch of the same trace where it is larger.
    private double sigma(Stop stop) {
        var steady = source.channel().between(stop.onsetS() - BrakingRules.CUT_BEFORE_S, stop.onsetS() - 0.3);
        return steady.size() < 8
                ? source.sigmaMps()
                : Math.max(
                        source.sigmaMps(),
                        LineFit.through(steady.timesS(), steady.values()).residualStandardDeviation());
    }

    private OptionalDouble lever(Stop stop) {
        var lever =
                recording.channel(ChannelKind.LEVER).map(channel -> channel.between(stop.onsetS() - 1.5, stop.restS()));
        return lever.isEmpty() ? OptionalDouble.empty() : firstPulled(lever.get());
    }

    private static OptionalDouble firstPulled(Channel lever) {
        for (int i = 1; i < lever.size(); i++) {
            if (lever.value(i) >= 0.5 && lever.value(i - 1) < 0.5) {
                // It moved somewhere between the two samples.
                return OptionalDouble.of((lever.timeS(i) + lever.timeS(i - 1)) / 2);
            }
        }
        return OptionalDouble.empty();
    }
}
