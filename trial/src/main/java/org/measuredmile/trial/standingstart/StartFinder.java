package org.measuredmile.trial.standingstart;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.recording.motion.Stops;
import org.measuredmile.trial.SpeedFinder;
import org.measuredmile.trial.standingstart.StandingStartRules.Target;
import org.measuredmile.trial.standingstart.TracedStart.Reached;

/// Finds every candidate start of a recording, and says of each whether it can carry a time.
///
/// Shape: a recording in, candidates in order of time out: every rise from walking pace or less to 3.5
/// m/s. Each that does not qualify has its own reasons with limit and value. Nothing is fitted that a plain look
/// refuses.
final class StartFinder {
    private final Recording recording;
    private final SpeedSource source;
    private final Channel speed;
    private final double stepS;

    private StartFinder(Recording recording, SpeedSource source) {
        this.recording = recording;
        this.source = source;
        this.speed = source.channel();
        this.stepS = speed.medianStepS();
    }

    /// How a day's recordings are searched.
    static final SpeedFinder<TracedStart> FINDER = new SpeedFinder<>(
            "start",
            StartFinder::find,
            source -> isTooCoarse(source) ? Optional.of(tooCoarse(source)) : Optional.empty(),
            "time the start by hand, or use a logger of 5 Hz or more",
            "time the start by hand, or use a logger that writes speed");

    static List<TracedStart> find(Recording recording, SpeedSource source) {
        var finder = new StartFinder(recording, source);
        return finder.rises().stream().map(finder::judged).toList();
    }

    /// Whether a source is sampled often enough at all.
    static boolean isTooCoarse(SpeedSource source) {
        return !(source.channel().medianStepS() <= StandingStartRules.RATE_SLACK / StandingStartRules.LEAST_RATE_HZ);
    }

    static String tooCoarse(SpeedSource source) {
        return "sampled every " + StandingStartWords.seconds(source.channel().medianStepS())
                + ", at most 0.20 s allowed: too coarse for a start, and slow receivers lag by seconds";
    }

    static final String COARSE_REMEDY = "time the start by hand, or use a logger of 5 Hz or more";

    /// Samples by index: `low` the slowest before the rise, `rest` the last at rest of at least a second's
    /// rest (or, without one, the last slow one), `cut` the first above 3.5 m/s, `end` the last of the run.
    private record Rise(int low, int rest, double restForS, int cut, int end) {}

    private List<Rise> rises() {
        var found = new ArrayList<Rise>();
        int slow = -1;
        for (int i = 0; i < speed.size(); i++) {
            if (speed.value(i) <= StandingStartRules.SLOW_MPS) {
                slow = i;
            } else if (speed.value(i) > StandingStartRules.CUT_MPS && slow >= 0) {
                found.add(rise(slow, i));
                slow = -1;
            }
        }
        return found;
    }

    private Rise rise(int slow, int cut) {
        int from = slow;
        while (from > 0 && speed.value(from - 1) <= StandingStartRules.CUT_MPS) {
            from--;
        }
        int low = slow;
        int longest = -1;
        double restForS = 0;
        double lastRestForS = 0;
        int begin = -1;
        for (int i = from; i <= slow; i++) {
            low = speed.value(i) < speed.value(low) ? i : low;
            boolean rests = speed.value(i) <= StandingStartRules.REST_MPS;
            begin = rests ? (begin < 0 || isGap(i) ? i : begin) : -1;
            if (rests) {
                lastRestForS = speed.timeS(i) - speed.timeS(begin);
                if (lastRestForS >= StandingStartRules.REST_S - stepS / 2) {
                    longest = i;
                    restForS = lastRestForS;
                }
            }
        }
        return longest >= 0
                ? new Rise(low, longest, restForS, cut, endOf(cut))
                : new Rise(low, slow, lastRestForS, cut, endOf(cut));
    }

    private boolean isGap(int index) {
        return index > 0 && speed.timeS(index) - speed.timeS(index - 1) > StandingStartRules.GAP_STEPS * stepS;
    }

    /// A run lasts until the speed has fallen clearly from its highest.
    private int endOf(int cut) {
        int highest = cut;
        for (int i = cut; i < speed.size(); i++) {
            if (speed.value(i) > speed.value(highest)) {
                highest = i;
            }
            if (speed.value(i) < speed.value(highest) - StandingStartRules.RUN_ENDS_MPS) {
                return highest;
            }
        }
        return speed.size() - 1;
    }

    private TracedStart judged(Rise rise) {
        var reasons = plainFaults(rise);
        double fromS = speed.timeS(rise.rest()) - StandingStartRules.CUT_BEFORE_S;
        double cutEndS = speed.timeS(rise.cut());
        var samples = speed.between(fromS, speed.timeS(rise.end()));
        Optional<StartFit.Fitted> fitted = Optional.empty();
        Map<Target, Reached> targets = Map.of();
        if (reasons.isEmpty()) {
            var cut = speed.between(Math.max(fromS, restBegin(rise)), cutEndS);
            double restMps = Stops.median(speed, Math.max(fromS, restBegin(rise)), speed.timeS(rise.rest()));
            switch (StartFit.fit(cut, source.sigmaMps(), restMps, speed.timeS(rise.rest()))) {
                case StartFit.Result.Good(var good) -> {
                    reasons.addAll(fitFaults(good, rise));
                    fitted = Optional.of(good);
                    targets = new StartTimes(source, samples, good, cutEndS).all();
                }
                case StartFit.Result.Bad(var why) -> reasons.add(why);
            }
        }
        boolean isTold = !isTooCoarse(source)
                && source.kind() != SpeedSource.Kind.POSITIONS
                && (!reasons.isEmpty() || creptS(rise) >= StandingStartRules.CREEPS_S);
        Map<Target, FromNamedSpeed.Passed> passed = isTold ? FromNamedSpeed.of(source, samples, cutEndS) : Map.of();
        return new TracedStart(
                recording, source, speed.timeS(rise.rest()), cutEndS, samples, fitted, targets, passed, reasons);
    }

    private double restBegin(Rise rise) {
        return speed.timeS(rise.rest()) - rise.restForS();
    }

    private List<String> plainFaults(Rise rise) {
        var faults = new ArrayList<String>();
        if (isTooCoarse(source)) {
            faults.add(tooCoarse(source) + "; " + COARSE_REMEDY);
        }
        if (source.kind() == SpeedSource.Kind.POSITIONS) {
            faults.add("no speed channel: steps between positions are too noisy for a start");
        }
        if (speed.value(rise.low()) > StandingStartRules.REST_MPS) {
            faults.add("rolling start: lowest speed " + StandingStartWords.mps(speed.value(rise.low())) + ", at most "
                    + StandingStartWords.mps(StandingStartRules.REST_MPS) + " counts as standing");
        } else if (rise.restForS() < StandingStartRules.REST_S - stepS / 2) {
            faults.add("rolling start: at rest for " + StandingStartWords.seconds(rise.restForS())
                    + " before it, at least " + StandingStartWords.seconds(StandingStartRules.REST_S) + " needed");
        } else if (faults.isEmpty()) {
            pushFault(rise).or(() -> samplingFault(rise)).ifPresent(faults::add);
        }
        return faults;
    }

    private Optional<String> pushFault(Rise rise) {
        double highest = 0;
        for (int i = rise.rest(); i <= rise.cut(); i++) {
            highest = Math.max(highest, speed.value(i));
            double fall = highest - speed.value(i);
            if (fall > StandingStartRules.FALL_BACK_MPS) {
                return Optional.of("foot or second push: speed fell back by " + StandingStartWords.mps(fall)
                        + " below " + StandingStartWords.mps(StandingStartRules.CUT_MPS) + ", at most "
                        + StandingStartWords.mps(StandingStartRules.FALL_BACK_MPS) + " is noise");
            }
        }
        double tookS = speed.timeS(rise.cut()) - speed.timeS(rise.rest());
        return tookS <= StandingStartRules.LONGEST_START_S
                ? Optional.empty()
                : Optional.of("not a start: " + StandingStartWords.seconds(tookS) + " from rest to "
                        + StandingStartWords.mps(StandingStartRules.CUT_MPS) + ", at most "
                        + StandingStartWords.seconds(StandingStartRules.LONGEST_START_S));
    }

    private Optional<String> samplingFault(Rise rise) {
        int moving = 0;
        for (int i = rise.rest(); i <= rise.cut(); i++) {
            moving += speed.value(i) > StandingStartRules.REST_MPS ? 1 : 0;
            if (i > rise.rest() && isGap(i)) {
                return Optional.of("gap of " + StandingStartWords.seconds(speed.timeS(i) - speed.timeS(i - 1))
                        + " in the start, samples are " + StandingStartWords.seconds(stepS) + " apart, at most "
                        + StandingStartWords.number(StandingStartRules.GAP_STEPS) + " sample times allowed");
            }
        }
        return moving >= StandingStartRules.FEWEST_SAMPLES
                ? Optional.empty()
                : Optional.of("only " + moving + " samples above "
                        + StandingStartWords.mps(StandingStartRules.REST_MPS) + " in the start, at least "
                        + StandingStartRules.FEWEST_SAMPLES + " needed");
    }

    private List<String> fitFaults(StartFit.Fitted fit, Rise rise) {
        var faults = new ArrayList<String>();
        double chiSquare = fit.settled().reducedChiSquare();
        if (chiSquare > StandingStartRules.MOST_CHI_SQUARE) {
            faults.add(crept(rise).orElse("foot, second push or slipping wheel")
                    + ": reduced χ² of the fit "
                    + StandingStartWords.number(chiSquare) + ", at most "
                    + StandingStartWords.number(StandingStartRules.MOST_CHI_SQUARE));
        }
        for (String name : fit.settled().onBound()) {
            faults.add(name + " ended on the bound of the fit");
        }
        return faults;
    }

    /// That it moved slowly for long before it went.
    private Optional<String> crept(Rise rise) {
        double creptS = creptS(rise);
        return creptS < StandingStartRules.CREEPS_S
                ? Optional.empty()
                : Optional.of("moving before the start, for " + StandingStartWords.seconds(creptS) + " at up to "
                        + StandingStartWords.mps(StandingStartRules.CREEPS_MPS)
                        + ", so that no one beginning fits it");
    }

    /// For how long it was no faster than a creep after its rest.
    private double creptS(Rise rise) {
        int went = rise.cut();
        while (went > rise.rest() && speed.value(went) > StandingStartRules.CREEPS_MPS) {
            went--;
        }
        return speed.timeS(went) - speed.timeS(rise.rest());
    }
}
