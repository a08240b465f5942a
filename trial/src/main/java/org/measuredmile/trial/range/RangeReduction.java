package org.measuredmile.trial.range;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.RunScreen;
import org.measuredmile.trial.TrialInput;

/// A day's range rides: each read, then the figures of each level. See [Range].
final class RangeReduction {
    private final TrialInput input;
    private final RangeRules rules;
    private final List<Finding> findings = new ArrayList<>();

    RangeReduction(TrialInput input, RangeRules rules) {
        this.input = input;
        this.rules = rules;
    }

    Outcome outcome() {
        if (input.runs().isEmpty()) {
            return Outcome.NOTHING;
        }
        var screen = new RunScreen(RangeDeclaration.DECLARATION, input);
        findings.addAll(screen.findings());
        var reader = new RideReader(input, rules, screen);
        var rides = input.runs().stream().map(reader::read).toList();
        findings.addAll(reader.findings());
        SortedMap<Variant, List<RangeRun>> byLevel = new TreeMap<>();
        rides.forEach(ride ->
                byLevel.computeIfAbsent(ride.level(), _ -> new ArrayList<>()).add(ride));
        var figures = new ArrayList<Figure>();
        byLevel.forEach((level, of) -> {
            if (of.stream().anyMatch(RangeRun::counts)) {
                var computed = new RangeFigures(input, rules, level, of).compute();
                figures.addAll(computed.figures());
                findings.addAll(computed.findings());
            }
        });
        return new Outcome(figures, rides.stream().map(RangeReduction::result).toList(), findings);
    }

    private static RunResult result(RangeRun ride) {
        var result = RunResult.of(ride.run(), ride.reason(), List.of())
                .with(RangeDeclaration.figure(ride.isEmptied() ? "distance" : "at-least"), value(ride.distanceM()))
                .with(
                        RangeDeclaration.figure("riding-time"),
                        value(ride.way().map(RiddenWay::ridingS).orElse(OptionalDouble.empty())))
                .with(
                        RangeDeclaration.figure("mean-speed"),
                        value(ride.way().map(RiddenWay::meanSpeedMps).orElse(OptionalDouble.empty())))
                .with(
                        RangeDeclaration.figure("ascent"),
                        value(ride.way().map(RiddenWay::ascentM).orElse(OptionalDouble.empty())))
                .with(RangeDeclaration.figure("energy"), value(ride.energyJ()))
                .with(RangeDeclaration.figure("energy-per-distance"), value(ride.joulesPerMetre()));
        var journey = ride.way().flatMap(RiddenWay::journey);
        if (journey.isEmpty()) {
            return result;
        }
        var first = journey.get().legs().getFirst();
        var channel = first.source().channel();
        return new RunResult(
                result.run(),
                result.variant(),
                result.direction(),
                result.state(),
                result.counted(),
                result.reason(),
                Optional.of(new RunResult.Stretch(
                        first.recording().name(), channel.timeS(0), channel.timeS(channel.size() - 1))),
                result.values(),
                journey.map(RidePlot::of));
    }

    private static double value(OptionalDouble value) {
        return value.orElse(Double.NaN);
    }
}
