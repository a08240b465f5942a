package org.measuredmile.trial.climb;

import java.util.Optional;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.CandidateMatching.Held;
import org.measuredmile.trial.ResolvedReadings.Value;
import org.measuredmile.trial.TrialInput;

/// One run up a hill with all that is known of it: what was written, and what its recording holds.
record ClimbRun(TrialInput input, Run run, Hill hill, String screened, Held<TracedClimb> held) {
    /// How a time came about.
    enum By {
        TRACE,
        WATCH,
        CAMERA
    }

    /// A duration.
    ///
    /// Unit: seconds; `ownSdS` is this run's alone; `perMetre` and `perScale` are what a metre of length and a
    /// relative error of the speed add, both shared by the runs of a day.
    record Timed(double seconds, double ownSdS, By by, double perMetre, double perScale) {}

    /// A speed at a gate; `assumed` where nobody knows it.
    record End(double mps, double standardUncertainty, boolean assumed) {}

    String drive() {
        return run.variant().get("drive").orElse("throttle");
    }

    Optional<TracedClimb> traced() {
        return held.candidate();
    }

    private Optional<TracedClimb> usable() {
        return traced().filter(TracedClimb::qualifies)
                .filter(climb -> courseFault(climb).isEmpty());
    }

    private Optional<String> courseFault(TracedClimb climb) {
        return hill.id().equals(climb.course().id())
                ? Optional.empty()
                : Optional.of("its recording passes " + climb.course().id() + ", it was written for " + hill.id());
    }

    Optional<Value> reading(String name) {
        return input.readings().of(run.id(), name);
    }

    /// The time by hand or by a camera's frames.
    Optional<Timed> byHand() {
        return reading(Climb.TIME).map(read -> {
            double own = read.isByCamera() ? read.stepSd() : StrictMath.hypot(ClimbRules.HAND_OWN_S, read.stepSd());
            return new Timed(read.si(), own, read.isByCamera() ? By.CAMERA : By.WATCH, 0, 0);
        });
    }

    /// The time by the recording.
    Optional<Timed> byTrace() {
        return usable().map(climb -> {
            double lengthSd =
                    hill.length().map(one -> one.standardUncertaintyM()).orElse(0.0);
            double perMetre = climb.secondsPerMetre();
            double length = hill.length().map(one -> one.valueM()).orElse(0.0);
            return new Timed(climb.durationS(), climb.ownSdS(lengthSd), By.TRACE, perMetre, perMetre * length);
        });
    }

    /// The time that stands: of two the one that is known better.
    Optional<Timed> time() {
        var hand = byHand();
        var trace = byTrace();
        if (hand.isPresent() && trace.isPresent()) {
            return wholeSd(hand.get()) < wholeSd(trace.get()) ? hand : trace;
        }
        return trace.or(() -> hand);
    }

    private double wholeSd(Timed one) {
        double common = one.by() == By.WATCH ? ClimbRules.HAND_COMMON_S : one.perScale() * scaleSd();
        return StrictMath.hypot(one.ownSdS(), common);
    }

    /// How well the scale of the recording's speed is known, relative.
    double scaleSd() {
        return traced().flatMap(climb -> input.instrumentOf(climb.recording()))
                .flatMap(Instrument::calibration)
                .map(Instrument.Calibration::standardUncertainty)
                .orElse(ClimbRules.SPEED_SCALE);
    }

    /// The length that the time is over: the surveyed one, else the one read.
    Optional<Double> lengthM() {
        return hill.length()
                .map(one -> one.valueM())
                .or(() -> reading(Climb.LENGTH).map(Value::si));
    }

    Optional<Double> meanMps() {
        return time().flatMap(time -> lengthM().map(length -> length / time.seconds()));
    }

    Optional<Double> lowestMps() {
        var traced = usable().map(TracedClimb::lowestMps).filter(one -> one.isPresent());
        return traced.map(one -> one.getAsDouble() * factor())
                .or(() -> reading(Climb.LOWEST).map(Value::si));
    }

    private double factor() {
        return traced().flatMap(climb -> input.instrumentOf(climb.recording()))
                .map(Instrument::factor)
                .orElse(1.0);
    }

    /// How well the lowest speed of this run is known, m/s.
    double lowestSdMps() {
        return usable().isPresent()
                ? ClimbRules.LOWEST_SD
                : reading(Climb.LOWEST).map(Value::stepSd).orElse(0.0);
    }

    End entry() {
        return end(Climb.ENTRY, usable().map(TracedClimb::entry));
    }

    End exit() {
        return end(Climb.EXIT, usable().map(TracedClimb::exit));
    }

    private End end(String reading, Optional<TracedClimb.Speed> traced) {
        var read = reading(reading);
        if (traced.isPresent()) {
            return new End(traced.get().mps() * factor(), traced.get().standardUncertainty(), false);
        }
        if (read.isPresent()) {
            double scale = ClimbRules.DISPLAY_SCALE * read.get().si();
            return new End(read.get().si(), StrictMath.hypot(read.get().stepSd(), scale), false);
        }
        return new End(meanMps().orElse(4.0), ClimbRules.END_SPEED_UNKNOWN_SD, true);
    }

    /// Why the run does not count; empty text when it does.
    String reason() {
        if (!screened.isEmpty()) {
            return screened;
        }
        if (time().isPresent()) {
            return "";
        }
        if (traced().isEmpty()) {
            String why = held.whyNone().isEmpty() ? "no recording holds this run and" : held.whyNone() + ";";
            return why + " no time was written down";
        }
        return traced().get().qualifies()
                ? courseFault(traced().get()).orElse("no time")
                : traced().get().reason();
    }

    boolean counts() {
        return reason().isEmpty();
    }
}
