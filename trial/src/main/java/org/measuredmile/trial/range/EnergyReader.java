package org.measuredmile.trial.range;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.motion.ClockShift;
import org.measuredmile.recording.motion.Journey;
import org.measuredmile.trial.TrialInput;

/// Finds what a ride took out of the battery: by its log, else by the wall, else by what it holds.
final class EnergyReader {
    private static final double IMPLIED_LEAST = 0.70;
    private static final double IMPLIED_MOST = 0.98;
    private static final double SAME_CLOCK_S = 4;
    private final TrialInput input;
    private final RangeRules rules;
    private final Run run;
    private final List<Finding> findings = new ArrayList<>();

    EnergyReader(TrialInput input, RangeRules rules, Run run) {
        this.input = input;
        this.rules = rules;
        this.run = run;
    }

    List<Finding> findings() {
        return findings;
    }

    /// What the maker says that the battery holds, in joules.
    Optional<Double> nominalJ() {
        var claimed = input.bike().claimed("battery-energy", QuantityKind.ENERGY);
        return claimed.isPresent() ? Optional.of(claimed.getAsDouble()) : Optional.empty();
    }

    /// The energy of a ride, or nothing where nothing tells it.
    Optional<EnergyOut> read(RiddenWay way, List<Recording> recordings, boolean isEmptied) {
        var wall = byWall();
        var log = recordings.stream()
                .flatMap(one -> BatteryLog.of(one).stream())
                .findFirst()
                .flatMap(one -> byLog(one, way));
        if (log.isPresent()) {
            wall.ifPresent(one -> compare(log.get(), one));
            return log;
        }
        return wall.or(() -> isEmptied ? byNominal() : Optional.empty());
    }

    private Optional<EnergyOut> byLog(BatteryLog log, RiddenWay way) {
        var place = Place.in(log.recording().name());
        if (log.turned()) {
            findings.add(Finding.note(
                    "current-sign", place, "the log counts a current out of the battery as negative; it was turned"));
        }
        if (way.journey().isEmpty()) {
            return Optional.of(measured(log, log.between(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY), 0));
        }
        var journey = way.journey().get();
        var aligned = aligned(log, journey);
        double fromS = journey.speed().timeS(0);
        double toS = journey.speed().timeS(journey.speed().size() - 1);
        var given = aligned.between(fromS, toS);
        double missingS = journey.sums().ridingS() * Math.max(0, 1 - coverage(aligned, journey));
        double missing = missingS / journey.sums().ridingS();
        if (missing > rules.mostMissing()) {
            findings.add(Finding.warning(
                    "battery-log-incomplete",
                    place,
                    String.format(
                            Locale.ROOT,
                            "the battery's log covers %.0f %% of the riding, at least %.0f %% needed; it is not used",
                            100 * (1 - missing),
                            100 * (1 - rules.mostMissing())),
                    "set the log's clock offset in recordings.csv, or write down what was put back at the wall"));
            return Optional.empty();
        }
        if (missing > 0.002) {
            findings.add(Finding.warning(
                    "battery-log-gaps",
                    place,
                    String.format(
                            Locale.ROOT,
                            "%.1f %% of the riding is not in the battery's log; the mean power of the rest stands in",
                            100 * missing),
                    ""));
        }
        return Optional.of(measured(aligned, given, missing));
    }

    /// The share of the riding time that the log covers.
    private static double coverage(BatteryLog log, Journey journey) {
        var speed = journey.speed();
        double ridden = 0;
        double covered = 0;
        for (int i = 1; i < speed.size(); i++) {
            if (speed.value(i) + speed.value(i - 1) > 1) {
                double stepS = speed.timeS(i) - speed.timeS(i - 1);
                ridden += stepS;
                covered += isCovered(log, (speed.timeS(i) + speed.timeS(i - 1)) / 2) ? stepS : 0;
            }
        }
        return ridden == 0 ? 0 : covered / ridden;
    }

    private static boolean isCovered(BatteryLog log, double timeS) {
        int next = log.power().indexAtOrAfter(timeS);
        return next > 0
                && next < log.power().size()
                && log.power().timeS(next) - log.power().timeS(next - 1) <= log.gapLimitS();
    }

    /// The log on the journey's time base: by its own date, and by correlation where its clock is another.
    private BatteryLog aligned(BatteryLog log, Journey journey) {
        var leg = journey.legs().stream()
                .filter(one -> one.recording().name().equals(log.recording().name()))
                .findFirst();
        if (leg.isPresent()) {
            return log.on(shifted(log, leg.get().shiftS()));
        }
        var stated = statedShiftS(log, journey);
        return switch (ClockShift.of(journey.speed(), log.power())) {
            case ClockShift.Known known -> {
                double offS = stated.map(one -> known.shiftS() - one).orElse(0.0);
                if (stated.isPresent() && Math.abs(offS) > SAME_CLOCK_S) {
                    findings.add(Finding.note(
                            "battery-log-clock",
                            Place.in(log.recording().name()),
                            String.format(
                                    Locale.ROOT,
                                    "the battery's log is on another clock: by when it works it is %.0f s %s,"
                                            + " likeness %.2f",
                                    Math.abs(offS),
                                    offS < 0 ? "fast" : "slow",
                                    known.likeness())));
                }
                yield log.on(known.applied(log.power()));
            }
            case ClockShift.Refused refused -> {
                if (stated.isEmpty()) {
                    findings.add(Finding.warning(
                            "battery-log-clock",
                            Place.in(log.recording().name()),
                            "the log has no date and can't be laid on the ride: " + refused.reason(),
                            "write its clock offset into recordings.csv; until then it is laid on the"
                                    + " ride's beginning"));
                }
                yield log.on(shifted(
                        log,
                        stated.orElse(journey.speed().timeS(0) - log.power().timeS(0))));
            }
        };
    }

    private Optional<Double> statedShiftS(BatteryLog log, Journey journey) {
        double offsetS = input.day()
                .recording(log.recording().name())
                .map(RecordingEntry::clockOffsetS)
                .orElse(0.0);
        return log.recording()
                .start()
                .flatMap(at -> journey.begin()
                        .map(begin -> java.time.Duration.between(begin, at).toNanos() / 1e9 + offsetS));
    }

    private static org.measuredmile.recording.Channel shifted(BatteryLog log, double shiftS) {
        return new ClockShift.Known(shiftS, 0, 1).applied(log.power());
    }

    private EnergyOut measured(BatteryLog log, BatteryLog.Given given, double missing) {
        var calibration = input.instrumentOf(log.recording()).flatMap(Instrument::calibration);
        var parts = new ArrayList<Contribution>();
        parts.add(Contribution.typeB(
                "scale of the battery's log",
                calibration.map(Instrument.Calibration::standardUncertainty).orElse(rules.logScale())));
        if (missing > 0) {
            parts.add(Contribution.rectangular("energy that was not logged", missing * 0.5));
        }
        double factor =
                input.instrumentOf(log.recording()).map(Instrument::factor).orElse(1.0);
        return new EnergyOut(
                EnergyOut.Origin.LOG,
                given.joules() * factor / (1 - missing),
                parts,
                calibration.isPresent()
                        ? List.of()
                        : List.of("the battery's log is right within 1.5 % (standard uncertainty): no calibration is"
                                + " written down"),
                Optional.of(log));
    }

    private Optional<EnergyOut> byWall() {
        var wall = input.readings().of(run.id(), "wall-energy");
        if (wall.isEmpty() || !(wall.get().si() > 0)) {
            return Optional.empty();
        }
        var efficiency = input.readings().of(run.id(), "charger-efficiency");
        double share = efficiency.map(one -> one.si()).orElse(rules.chargerEfficiency());
        double shareSd = efficiency.isPresent() ? 0.01 : rules.chargerEfficiencySd();
        var calibration = wall.get().instrument().flatMap(Instrument::calibration);
        return Optional.of(new EnergyOut(
                EnergyOut.Origin.WALL,
                wall.get().si() * share,
                List.of(
                        Contribution.typeB("charger's efficiency", shareSd / share),
                        Contribution.typeB(
                                "scale of the wall meter",
                                calibration
                                        .map(Instrument.Calibration::standardUncertainty)
                                        .orElse(rules.wallScale())),
                        Contribution.typeB(
                                "step of the wall meter",
                                wall.get().stepSd() / wall.get().si())),
                efficiency.isPresent() ? List.of() : List.of("the charger's efficiency: 87 ± 3 %"),
                Optional.empty()));
    }

    private Optional<EnergyOut> byNominal() {
        return nominalJ()
                .map(nominal -> new EnergyOut(
                        EnergyOut.Origin.NOMINAL,
                        nominal * rules.usableShare(),
                        List.of(Contribution.typeB(
                                "usable share of the nominal energy", rules.usableShareSd() / rules.usableShare())),
                        List.of("energy out of the battery: 93 ± 3 % of the nominal " + wattHours(nominal)),
                        Optional.empty()));
    }

    private static String wattHours(double joules) {
        return String.format(Locale.ROOT, "%.0f Wh", joules / 3600);
    }

    private void compare(EnergyOut log, EnergyOut wall) {
        var read = input.readings().of(run.id(), "wall-energy").orElseThrow();
        double implied = log.joules() / read.si();
        if (implied < IMPLIED_LEAST || implied > IMPLIED_MOST) {
            findings.add(Finding.warning(
                    "energies-disagree",
                    read.reading().place(),
                    String.format(
                            Locale.ROOT,
                            "log and wall meter would make the charger %.0f %% efficient; %s from the log is"
                                    + " used, the"
                                    + " wall says %s",
                            100 * implied,
                            wattHours(log.joules()),
                            wattHours(wall.joules())),
                    "look whether the battery was charged in between, or whether the log is whole"));
        }
    }
}
