package org.measuredmile.trial.standingstart;

import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.recording.day.Run;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.trial.CandidateMatching.Held;
import org.measuredmile.trial.ResolvedReadings.Value;
import org.measuredmile.trial.standingstart.StandingStartRules.Target;
import org.measuredmile.trial.standingstart.TracedStart.Reached;

/// One run as this trial sees it: what was written down, the start in a recording, and why either does not
/// count.
///
/// Shape: `screened` is why nothing of the run counts (empty when it does). Where a run has both, the
/// recording stands and the watch is compared with it.
record StartRun(
        Run run,
        String screened,
        Map<Target, Value> times,
        Map<Target, Value> distances,
        Held<TracedStart> held,
        Optional<StartPower> power) {
    private static final RoadLoad NO_LOAD = new RoadLoad(0, 0);

    StartRun {
        times = Collections.unmodifiableMap(new TreeMap<>(times));
        distances = Collections.unmodifiableMap(new TreeMap<>(distances));
    }

    /// A value of one run, and what of its standard uncertainty is this run's own.
    ///
    /// Shape: `trace` is where it came from, when not from a person; `reacted` says that a hand stopped a watch.
    record Part(double value, double ownSd, Optional<Reached.Yes> trace, boolean reacted) {
        static Part traced(double value, double ownSd, Reached.Yes trace) {
            return new Part(value, ownSd, Optional.of(trace), false);
        }

        static Part read(Value read, double perSecond) {
            boolean reacted = !read.isByCamera();
            double handSd = reacted ? StandingStartRules.HAND_RUN_S * perSecond : 0;
            return new Part(read.si(), StrictMath.hypot(handSd, read.stepSd()), Optional.empty(), reacted);
        }
    }

    /// The start in a recording.
    Optional<TracedStart> traced() {
        return held.candidate();
    }

    String drive() {
        return run.variant().get("drive").orElse("throttle");
    }

    /// The speed that was aimed at; lower ones are passed on the way.
    Target aim() {
        return run.variant().get("to").flatMap(Target::of).orElse(Target.TWENTY);
    }

    boolean isUsable() {
        return screened.isEmpty() && (traced().filter(TracedStart::qualifies).isPresent() || !times.isEmpty());
    }

    private Optional<Reached.Yes> reached(Target target) {
        return traced().flatMap(start -> start.reached(target));
    }

    Optional<Part> time(Target target) {
        var byTrace = reached(target)
                .map(yes ->
                        Part.traced(yes.timeS(), StrictMath.hypot(fit().motion().ownSd(), yes.crossingSd()), yes));
        return byTrace.or(() -> handTime(target));
    }

    Optional<Part> handTime(Target target) {
        return Optional.ofNullable(times.get(target)).map(read -> Part.read(read, 1));
    }

    Optional<Part> rampTime(Target target) {
        return reached(target)
                .map(yes -> Part.traced(
                        yes.rampTimeS(), StrictMath.hypot(fit().ramp().ownSd(), yes.crossingSd()), yes));
    }

    Optional<Part> distance(Target target) {
        var byTrace = reached(target)
                .map(yes -> Part.traced(
                        yes.distanceM(), yes.crossing().distanceSd(target.speedMps(), yes.crossingSd()), yes));
        return byTrace.or(
                () -> Optional.ofNullable(distances.get(target)).map(read -> Part.read(read, target.speedMps())));
    }

    Optional<StartPower.Power> meanPower(Target target) {
        return reached(target).flatMap(yes -> power.map(one -> one.mean(target, traced().orElseThrow(), yes)));
    }

    Optional<StartPower.Power> peakPower() {
        return traced().filter(TracedStart::qualifies)
                .flatMap(start -> power.flatMap(one -> one.peak(start.samples(), fit().rampS())));
    }

    /// Launch force and power limit, where the trace tells them.
    ThrustFit.Outcome thrust() {
        if (power.isEmpty() || traced().filter(TracedStart::qualifies).isEmpty()) {
            return new ThrustFit.Outcome.None(
                    reason().isEmpty() ? "no force: it needs a recording and the rider's mass as ridden" : reason());
        }
        return ThrustFit.of(traced().get(), power.get().moved(0, 0, NO_LOAD));
    }

    /// The same were mass, wheels or road load so much more; only for a start that tells them.
    ThrustFit.Outcome thrust(double moreKg, double moreTurningKg, RoadLoad moreLoad) {
        return ThrustFit.of(traced().orElseThrow(), power.orElseThrow().moved(moreKg, moreTurningKg, moreLoad));
    }

    private StartFit.Fitted fit() {
        return traced().orElseThrow().fitted().orElseThrow();
    }

    /// Whether the run went on and never had the speed.
    boolean staysBelow(Target target) {
        return target.compareTo(aim()) <= 0
                && traced().filter(TracedStart::qualifies)
                        .filter(start -> start.targets().get(target) instanceof Reached.No no && no.stayedBelow())
                        .isPresent();
    }

    /// Why the run has no time to a speed; empty text when it has.
    String reason(Target target) {
        if (!screened.isEmpty()) {
            return screened;
        }
        if (time(target).isPresent()) {
            return "";
        }
        if (traced().isEmpty()) {
            String why = held.whyNone().isEmpty() ? "no recording holds this run and" : held.whyNone() + ";";
            return why + " no time to " + target.words() + " was written down";
        }
        if (!traced().get().qualifies()) {
            return traced().get().reason();
        }
        return traced().get().targets().get(target) instanceof Reached.No(String why, boolean _)
                ? why
                : "no time to " + target.words();
    }

    /// Why the run does not count for anything; empty text when it does.
    String reason() {
        if (!screened.isEmpty()) {
            return screened;
        }
        if (isUsable()) {
            for (var target : Target.values()) {
                if (time(target).isPresent()) {
                    return "";
                }
            }
        }
        return reason(Target.TEN);
    }
}
