package org.measuredmile.trial.braking;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.statistics.LineFit;
import org.measuredmile.quantity.statistics.StudentT;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.motion.InertialStop;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.TrialInput;

/// What is worth saying of a braking day beside its figures. Nothing here changes a figure or drops a run.
final class BrakingFindings {
    private static final double ENTRY_AGREES_MPS = 0.3;

    private BrakingFindings() {}

    /// Shortest and longest run, trend over runs, and what the figure is not.
    static List<Finding> ofStoppingDistance(Figure figure) {
        var findings = new ArrayList<Finding>();
        var counted = figure.runs().stream().filter(FigureRun::counted).toList();
        if (counted.size() > 1) {
            findings.add(shortestAndLongest(counted));
        }
        trend(counted).ifPresent(findings::add);
        findings.add(Finding.note(
                "not-the-standards-conditions",
                Place.NOWHERE,
                figure.key().variant().has("nominal", "25-kmh")
                        ? "not the standard's conditions (ISO 4210-2: stated mass of bike and rider, "
                                + "instruments, number of runs), so its limits are not applied"
                        : "no bicycle standard known to the crew stops from 20 mph, so none is applied"));
        return findings;
    }

    private static Finding shortestAndLongest(List<FigureRun> counted) {
        var shortest = counted.getFirst();
        var longest = counted.getFirst();
        for (var run : counted) {
            shortest = value(run) < value(shortest) ? run : shortest;
            longest = value(run) > value(longest) ? run : longest;
        }
        return Finding.note(
                "shortest-and-longest",
                Place.NOWHERE,
                "shortest run " + BrakingWords.metres(value(shortest)) + " (" + shortest.run() + "), longest "
                        + BrakingWords.metres(value(longest)) + " (" + longest.run() + ")");
    }

    private static double value(FigureRun run) {
        return run.value().orElseThrow();
    }

    /// The change from run to run, which hot brakes or a tired rider would make.
    private static Optional<Finding> trend(List<FigureRun> counted) {
        if (counted.size() < 4) {
            return Optional.empty();
        }
        double[] order = new double[counted.size()];
        double[] values = new double[counted.size()];
        for (int i = 0; i < order.length; i++) {
            order[i] = i;
            values[i] = value(counted.get(i));
        }
        var line = LineFit.through(order, values);
        double half = StudentT.twoSided95(line.degreesOfFreedom()) * line.slopeUncertainty();
        String change =
                "change from run to run " + BrakingWords.metres(line.slope()) + " ± " + BrakingWords.metres(half);
        if (line.slope() > half) {
            return Optional.of(Finding.warning(
                    "fade", Place.NOWHERE, change + ": stops grow longer", "let the brakes cool, then ride more runs"));
        }
        return Optional.of(Finding.note(
                "trend", Place.NOWHERE, change + (line.slope() < -half ? ": stops grow shorter" : ": none seen")));
    }

    /// What the speed was measured by, where an accelerometer was used.
    static Optional<Finding> ofSource(List<TraceValues> counted) {
        long sharp =
                counted.stream().filter(one -> one.stop().sharp().isPresent()).count();
        return sharp == 0
                ? Optional.empty()
                : Optional.of(Finding.note(
                        "speed-source",
                        Place.NOWHERE,
                        BrakingWords.BOTH + " in " + sharp + " of " + counted.size() + " runs"));
    }

    /// Why an accelerometer that was there gave nothing.
    private static Optional<Finding> unused(BrakingRun run) {
        return run.traced()
                .flatMap(stop -> stop.inertial()
                        .flatMap(one -> one instanceof InertialStop.Refused(String reason)
                                ? Optional.of(Finding.note(
                                        "accelerometer-not-used",
                                        Place.atTime(stop.recording().name(), stop.onsetS()),
                                        "run " + run.run().id() + ": satellite speed alone, for " + reason))
                                : Optional.empty()));
    }

    /// What one run shows besides its value.
    static List<Finding> ofRun(TrialInput input, BrakingRun run) {
        var findings = new ArrayList<Finding>();
        run.tapedM().ifPresent(metres -> pitchOver(run, metres).ifPresent(findings::add));
        unused(run).ifPresent(findings::add);
        for (String word : List.of("wheel-lock", "rear-lift", "skid")) {
            String said = input.readings().word(run.run().id(), word);
            if (!said.isEmpty() && !said.equals("no") && !said.equals("none")) {
                findings.add(Finding.note(
                        word,
                        run.run().place(),
                        "run " + run.run().id() + ": " + word.replace('-', ' ') + ": " + said));
            }
        }
        String surface = input.day().conditions().surface();
        boolean written = run.run().state() != Run.State.PROPOSED;
        if (written && !surface.isEmpty() && !run.run().variant().has("surface", surface)) {
            findings.add(Finding.warning(
                    "surface-differs",
                    run.run().place(),
                    "run " + run.run().id() + " says " + run.run().variant().text() + ", the day's surface is "
                            + surface,
                    "write surface=wet or surface=dry in the run's variant"));
        }
        if (run.isTaped() && run.screened().isEmpty() && run.traced().isPresent()) {
            findings.addAll(tapeAndTrace(input, run));
        }
        return findings;
    }

    private static Optional<Finding> pitchOver(BrakingRun run, double metres) {
        double deceleration = BrakingCorrection.meanDeceleration(run.nominal().speedMps(), metres);
        if (deceleration <= BrakingRules.PITCH_OVER_MPS2) {
            return Optional.empty();
        }
        return Optional.of(Finding.warning(
                "beyond-pitch-over",
                run.run().place(),
                "run " + run.run().id() + ": " + BrakingWords.metres(metres) + " from "
                        + run.nominal().words() + " is "
                        + BrakingWords.mps2(deceleration) + " on average, beyond the "
                        + BrakingWords.mps2(BrakingRules.PITCH_OVER_MPS2)
                        + " at which an upright bicycle pitches over",
                "look at the entry speed, the mark and the tape again; a long or low bike may do it"));
    }

    private static List<Finding> tapeAndTrace(TrialInput input, BrakingRun run) {
        var findings = new ArrayList<Finding>();
        var stop = run.traced().orElseThrow();
        var tape = run.tape();
        if (tape.isPresent() && Math.abs(tape.get().entryMps() - stop.entryMps()) > ENTRY_AGREES_MPS) {
            findings.add(Finding.warning(
                    "entry-speed-differs",
                    Place.atTime(stop.recording().name(), stop.onsetS()),
                    "run " + run.run().id() + ": entry speed read "
                            + BrakingWords.kmh(tape.get().entryMps()) + ", by the recording "
                            + BrakingWords.kmh(stop.entryMps()),
                    "find out which of the two is the bike's speed before the figure is used"));
        }
        if (!run.traceReason().isEmpty()) {
            findings.add(Finding.warning(
                    "trace-not-used",
                    Place.atTime(stop.recording().name(), stop.onsetS()),
                    "run " + run.run().id() + " counts by its tape; its trace does not: " + run.traceReason(),
                    ""));
        } else if (tape.isPresent()) {
            findings.add(compared(input, run, tape.get()));
        }
        return findings;
    }

    /// With a lever channel both methods measure the same distance; without one, tape less trace is the take-up.
    private static Finding compared(TrialInput input, BrakingRun run, BrakingRun.Tape tape) {
        var values = run.traceValues().orElseThrow();
        var braking = values.brakingDistance();
        var takeUp = values.takeUp(input.instrumentOf(values.stop().recording()));
        double nominalMps = run.nominal().speedMps();
        double tapedM = run.tapedM().orElseThrow();
        double traceM =
                braking.value() + takeUp.map(one -> one.timeS() * nominalMps).orElse(0.0);
        double u = StrictMath.hypot(tape.standardUncertaintyM(nominalMps), braking.standardUncertainty());
        if (takeUp.isPresent()) {
            u = StrictMath.hypot(
                    u,
                    nominalMps
                            * StrictMath.hypot(
                                    takeUp.get().ownSd(), takeUp.get().delaySd()));
        }
        double difference = tapedM - traceM;
        double mostM = (takeUp.isPresent() ? 0 : BrakingRules.MOST_TAKE_UP_S * nominalMps) + 2 * u;
        String words = "run " + run.run().id() + ": tape " + BrakingWords.metres(tapedM) + ", trace "
                + BrakingWords.metres(traceM) + (takeUp.isPresent() ? "" : " from the onset of deceleration");
        var place = Place.atTime(values.stop().recording().name(), values.stop().onsetS());
        if (difference < -2 * u || difference > mostM) {
            return Finding.warning(
                    "tape-and-trace-differ",
                    place,
                    words + ": they differ by " + BrakingWords.metres(difference)
                            + ", more than twice the uncertainty of "
                            + BrakingWords.metres(u),
                    "look at the mark, the tape and the clock of the recording");
        }
        return Finding.note(
                "tape-and-trace",
                place,
                takeUp.isPresent()
                        ? words + ": they agree"
                        : words + ": take-up of " + BrakingWords.seconds(difference / nominalMps) + " between them");
    }

    /// What the day did not write down.
    static List<Finding> ofDay(TrialInput input) {
        var findings = new ArrayList<Finding>();
        if (input.readings().ofDay("wind-speed").isEmpty()) {
            findings.add(Finding.warning(
                    "no-wind",
                    new Place("day.yaml", "conditions.windSpeed"),
                    "no wind speed was written down, so the interval is wider",
                    "write the wind speed and where it comes from"));
        } else if (input.readings().ofDay("wind-speed").get().si() > BrakingRules.MOST_WIND_MPS) {
            findings.add(Finding.warning(
                    "wind-above-limit",
                    new Place("day.yaml", "conditions.windSpeed"),
                    "wind of "
                            + BrakingWords.number(
                                    input.readings().ofDay("wind-speed").get().si())
                            + " m/s is above 3 m/s, so the interval is wider",
                    "ride again on a calmer day"));
        }
        if (input.readings()
                .ofDay("bedded-in")
                .map(value -> value.word().equals("no"))
                .orElse(false)) {
            findings.add(Finding.warning(
                    "not-bedded-in",
                    Place.NOWHERE,
                    "the brakes were not bedded in",
                    "bed them in and ride again; new pads bite less"));
        }
        return findings;
    }
}
