package org.measuredmile.trial.range;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.LevelRole;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.RunScreen;
import org.measuredmile.trial.TrialInput;

/// Puts together what is known of one ride. See [RangeRun].
final class RideReader {
    private static final double USUAL_STOPS_PER_M = 0.0005;
    private static final double USUAL_WIND_MPS = 2;
    private static final double READ_WIND_SD = 0.3;
    private static final double USUAL_WIND_SD = 0.5;
    private final TrialInput input;
    private final RangeRules rules;
    private final RunScreen screen;
    private final List<Finding> findings = new ArrayList<>();

    RideReader(TrialInput input, RangeRules rules, RunScreen screen) {
        this.input = input;
        this.rules = rules;
        this.screen = screen;
    }

    List<Finding> findings() {
        return findings;
    }

    RangeRun read(Run run) {
        var level = LevelRole.with(LevelRole.levelOf(run.variant()), input.bike(), input.runs())
                .only(List.of("level", "levelRole"));
        var ending = Ending.of(input.readings().word(run.id(), "ended"));
        String reason = screen.reasonNotToCount(run);
        var ways = new WayReader(input, rules, run);
        var recordings = ways.recordings();
        var way = ways.read(recordings);
        findings.addAll(ways.findings());
        if (way.isEmpty()) {
            String why = reason.isEmpty() ? "neither a recording of the ride nor its distance by hand" : reason;
            return new RangeRun(run, level, why, ending, way, Optional.empty(), Optional.empty(), List.of());
        }
        var energies = new EnergyReader(input, rules, run);
        var energy = energies.read(way.get(), recordings, ending.isEmptied());
        findings.addAll(energies.findings());
        var assumed = new ArrayList<>(way.get().assumed());
        energy.ifPresent(one -> assumed.addAll(one.assumed()));
        String lost = ways.incomplete().isEmpty() ? missing(way.get()) : ways.incomplete();
        String why = reason.isEmpty() ? lost : reason;
        return new RangeRun(
                run, level, why, ending, way, energy, conditions(run, way.get(), recordings, assumed), assumed);
    }

    private String missing(RiddenWay way) {
        double unrecorded = way.journey().map(one -> one.sums().unrecordedM()).orElse(0.0);
        double share = unrecorded / way.distanceM();
        return share <= rules.mostMissing()
                ? ""
                : String.format(
                        Locale.ROOT,
                        "%.0f %% of the way was not recorded, at most %.0f %% allowed",
                        100 * share,
                        100 * rules.mostMissing());
    }

    private Optional<RangeRun.Conditions> conditions(
            Run run, RiddenWay way, List<Recording> recordings, List<String> assumed) {
        if (way.meanSquareSpeed().isEmpty() || way.ridingS().isEmpty()) {
            return Optional.empty();
        }
        var setting = RoadSetting.of(input, run);
        assumed.addAll(setting.assumed());
        var wind = input.readings().of(run.id(), "wind-speed");
        if (wind.isEmpty()) {
            assumed.add("wind: 2 ± 1 m/s");
        }
        if (way.ascentM().isEmpty()) {
            assumed.add("ascent: 4 ± 3 m a kilometre");
        }
        if (way.stops().isEmpty()) {
            assumed.add("stops: one in two kilometres");
        }
        double distanceM = way.distanceM();
        var rider = rider(run, recordedW(recordings, way.ridingS().getAsDouble()), assumed);
        var ride = new RideConditions(
                setting.setting(),
                way.meanSquareSpeed().getAsDouble(),
                way.ridingS().getAsDouble() / distanceM,
                wind.map(one -> one.si()).orElse(USUAL_WIND_MPS),
                way.ascentM().isPresent() ? way.ascentM().getAsDouble() / distanceM : rules.usualAscent(),
                way.stops().isPresent() ? way.stops().getAsDouble() / distanceM : USUAL_STOPS_PER_M,
                rider.watts());
        var spreads = new ReferenceRatio.Spreads(
                setting.bikeSdKg(),
                setting.riderSdKg(),
                setting.airSdKgPerM3(),
                wind.isPresent() ? READ_WIND_SD : USUAL_WIND_SD,
                way.ascentM().isPresent() ? way.ascentSdM() / distanceM : rules.usualAscentSd(),
                rider.relativeSd());
        return Optional.of(new RangeRun.Conditions(ride, setting, RoadSetting.riderKg(input, run), spreads));
    }

    private record Rider(double watts, double relativeSd) {}

    private Rider rider(Run run, OptionalDouble recorded, List<String> assumed) {
        if (run.variant().has("drive", "throttle")) {
            return new Rider(0, 0);
        }
        var typed = input.readings().of(run.id(), "rider-power");
        if (typed.isPresent()) {
            return new Rider(typed.get().si(), rules.typedRiderSd());
        }
        if (recorded.isPresent()) {
            return new Rider(recorded.getAsDouble(), rules.recordedRiderSd());
        }
        assumed.add("rider's power: 75 ± 15 W, no power meter");
        return new Rider(rules.riderW(), rules.usualRiderSd());
    }

    /// What a power meter recorded of the rider's work over all recordings of the run, over the riding time:
    /// what was pedalled before standing still was pedalled too.
    private static OptionalDouble recordedW(List<Recording> recordings, double ridingS) {
        double joules = 0;
        boolean isThere = false;
        for (var recording : recordings) {
            var power = recording.channel(ChannelKind.POWER);
            if (power.isPresent() && power.get().size() > 1) {
                isThere = true;
                joules += joules(power.get(), 5 * power.get().medianStepS());
            }
        }
        return isThere ? OptionalDouble.of(joules / ridingS) : OptionalDouble.empty();
    }

    private static double joules(Channel power, double limitS) {
        double sum = 0;
        for (int i = 1; i < power.size(); i++) {
            double stepS = power.timeS(i) - power.timeS(i - 1);
            sum += stepS <= limitS ? stepS * (power.value(i) + power.value(i - 1)) / 2 : 0;
        }
        return sum;
    }
}
