package org.measuredmile.trial.range;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Ascent;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.RecordingPart;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.motion.Journey;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.trial.ResolvedReadings;
import org.measuredmile.trial.TrialInput;

/// Finds the way of a range ride: from the recordings that the run names, else from what was written down.
final class WayReader {
    private static final double DISTANCES_DIFFER = 0.03;
    private final TrialInput input;
    private final RangeRules rules;
    private final Run run;
    private final List<Finding> findings = new ArrayList<>();
    private final List<String> missing = new ArrayList<>();

    WayReader(TrialInput input, RangeRules rules, Run run) {
        this.input = input;
        this.rules = rules;
        this.run = run;
    }

    List<Finding> findings() {
        return findings;
    }

    /// Why the recordings do not tell the whole ride; empty text when they do, or where a distance by hand
    /// stands in.
    String incomplete() {
        boolean isTyped = input.readings().of(run.id(), "distance").isPresent();
        return isTyped || missing.isEmpty()
                ? ""
                : String.join(", ", missing)
                        + ", named with the run, could not be used, so that part of the way is missing";
    }

    /// The recordings of the run: those named with it, else, where it is the trial's only one, those that nobody
    /// named at all.
    List<Recording> recordings() {
        var named = input.day().recordings().stream()
                .filter(entry -> entry.runs().contains(run.id()))
                .toList();
        if (named.isEmpty()) {
            return input.runs().size() > 1
                    ? List.of()
                    : input.recordingsToSearch().stream()
                            .filter(one -> input.day().recording(one.name()).isEmpty())
                            .toList();
        }
        var found = new ArrayList<Recording>();
        for (var entry : named) {
            var recording = Optional.ofNullable(input.recordings().get(entry.file()));
            if (recording.isEmpty()) {
                missing.add(entry.file());
            }
            recording.ifPresent(one -> found.add(entry.window(run.id())
                    .map(window -> RecordingPart.between(one, window.fromS(), window.toS()))
                    .orElse(one)));
        }
        return found.stream().filter(one -> one.timesS().length > 1).toList();
    }

    /// The way, or nothing where neither a recording nor a distance by hand is there.
    Optional<RiddenWay> read(List<Recording> recordings) {
        var typed = input.readings().of(run.id(), "distance");
        var journey = Journey.of(recordings.stream()
                .map(one -> new Journey.Part(one, clockOffsetS(one)))
                .toList());
        boolean isWhole = missing.isEmpty()
                && journey.filter(one -> one.leftOut().isEmpty()).isPresent();
        journey.ifPresent(one -> one.leftOut().forEach(missing::add));
        if (journey.isPresent() && (isWhole || typed.isEmpty())) {
            findings.addAll(journey.get().findings());
            var way = recorded(journey.get());
            typed.ifPresent(one -> compare(one, way));
            return Optional.of(way);
        }
        return typed.map(this::typed);
    }

    private double clockOffsetS(Recording recording) {
        return input.day()
                .recording(recording.name())
                .map(RecordingEntry::clockOffsetS)
                .orElse(0.0);
    }

    private RiddenWay recorded(Journey journey) {
        var sums = journey.sums();
        var assumed = new ArrayList<String>();
        var first = journey.legs().getFirst();
        double distanceM = sums.wayM() * factor(first.recording()) + sums.unrecordedM();
        var scale = new ArrayList<Contribution>();
        scale.add(scaleOf(first, assumed));
        if (sums.unrecordedM() > 0) {
            scale.add(Contribution.rectangular("way that was not recorded", 0.3 * sums.unrecordedM() / distanceM));
        }
        var ascent = ascent(journey);
        int laps = journey.legs().stream()
                .mapToInt(leg -> leg.recording().marks(Mark.Kind.LAP).size())
                .sum();
        return new RiddenWay(
                distanceM,
                scale,
                OptionalDouble.of(sums.ridingS()),
                OptionalDouble.of(sums.meanSquareSpeed()),
                ascent.metres(),
                ascent.sdM(),
                OptionalDouble.of(sums.stops()),
                laps(laps),
                Optional.of(journey),
                journey.legs().stream().map(leg -> leg.recording().name()).toList(),
                assumed);
    }

    private double factor(Recording recording) {
        return input.instrumentOf(recording).map(Instrument::factor).orElse(1.0);
    }

    private Contribution scaleOf(Journey.Leg leg, List<String> assumed) {
        var instrument = input.instrumentOf(leg.recording());
        var calibration = instrument.flatMap(Instrument::calibration);
        double usual = leg.source().kind() == SpeedSource.Kind.WHEEL
                ? leg.source()
                        .wheelScale()
                        .map(known -> known.standardUncertainty())
                        .orElse(rules.wheelScale())
                : rules.receiverScale();
        if (calibration.isEmpty()) {
            assumed.add(String.format(
                    Locale.ROOT,
                    "%s is right within %.1f %% (standard uncertainty): no calibration is written down",
                    leg.source().kind().title(),
                    100 * usual));
        }
        String id = instrument.map(Instrument::id).orElse("");
        return Contribution.typeB(
                        "scale of the distance",
                        calibration
                                .map(Instrument.Calibration::standardUncertainty)
                                .orElse(usual))
                .sharedAs(id.isEmpty() ? "" : "calibration of " + id);
    }

    private record Risen(OptionalDouble metres, double sdM) {}

    private Risen ascent(Journey journey) {
        var typed = input.readings().of(run.id(), "ascent");
        if (typed.isPresent()) {
            return new Risen(
                    OptionalDouble.of(typed.get().si()),
                    0.1 * typed.get().si() + typed.get().stepSd());
        }
        double metres = 0;
        double sdM = 0;
        for (var leg : journey.legs()) {
            var one = Ascent.of(leg.recording(), input.day().conditions().airTemperatureK());
            if (one.isEmpty()) {
                return new Risen(OptionalDouble.empty(), 0);
            }
            metres += one.get().ascentM();
            // A hysteresis keeps noise out and takes small rises with it.
            sdM += one.get().ascentM() * (one.get().isBarometric() ? 0.05 : 0.20)
                    + one.get().hysteresisM();
        }
        return new Risen(OptionalDouble.of(metres), sdM);
    }

    private int laps(int recorded) {
        return input.readings()
                .of(run.id(), "laps")
                .map(one -> (int) Math.round(one.si()))
                .orElse(recorded);
    }

    private RiddenWay typed(ResolvedReadings.Value distance) {
        var readings = input.readings();
        var time = readings.of(run.id(), "riding-time");
        var ascent = readings.of(run.id(), "ascent");
        var calibration = distance.instrument().flatMap(Instrument::calibration);
        double relative =
                calibration.map(Instrument.Calibration::standardUncertainty).orElse(rules.wheelScale());
        var meanSquare = time.isPresent()
                ? OptionalDouble.of(square(distance.si() / time.get().si()) * RangeRun.SPEEDS_VARY)
                : OptionalDouble.empty();
        return new RiddenWay(
                distance.si(),
                List.of(
                        Contribution.typeB("scale of the distance", relative),
                        Contribution.typeB("step of the distance", distance.stepSd() / distance.si())),
                time.map(one -> OptionalDouble.of(one.si())).orElse(OptionalDouble.empty()),
                meanSquare,
                ascent.map(one -> OptionalDouble.of(one.si())).orElse(OptionalDouble.empty()),
                ascent.map(one -> 0.1 * one.si() + one.stepSd()).orElse(0.0),
                readings.of(run.id(), "stops")
                        .map(one -> OptionalDouble.of(one.si()))
                        .orElse(OptionalDouble.empty()),
                laps(0),
                Optional.empty(),
                List.of(),
                typedAssumptions(calibration.isPresent(), time.isPresent()));
    }

    private static List<String> typedAssumptions(boolean isCalibrated, boolean isTimed) {
        var assumed = new ArrayList<String>();
        if (!isCalibrated) {
            assumed.add("the distance by hand is right within 1 % (standard uncertainty): no calibration is"
                    + " written down");
        }
        if (isTimed) {
            assumed.add("speeds vary on the way: their mean square is 1.05 times the square of their mean");
        }
        return assumed;
    }

    private static double square(double value) {
        return value * value;
    }

    private void compare(ResolvedReadings.Value typed, RiddenWay way) {
        double ratio = typed.si() / way.distanceM();
        if (Math.abs(ratio - 1) > DISTANCES_DIFFER) {
            findings.add(Finding.warning(
                    "distances-disagree",
                    typed.reading().place(),
                    String.format(
                            Locale.ROOT,
                            "the distance by hand is %.3f of the recorded one (%.2f km); the recorded one is used",
                            ratio,
                            way.distanceM() / 1000),
                    "look whether a recording is missing, or whether the display counts in other units"));
        }
    }
}
