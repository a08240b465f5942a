package org.measuredmile.trial.assistspeed;

import java.util.List;
import java.util.OptionalDouble;
import org.measuredmile.trial.CompassBearing;
import org.measuredmile.trial.TrialInput;

/// The day's wind along the ways that were ridden.
///
/// Shape: `headsMps` one a way. Where bearing and direction are known they are w·cos φ of the ways' own headings, a
/// ride that went round counting by what is left of its headings' mean; of two ways whose bearing nobody knows, ± w/√2,
/// the root mean square of w·cos φ; of one such way, nothing, and `oneWay` of the wind is open.
/// Unit: m/s.
record RoadWind(double windMps, boolean isWritten, boolean isBearingKnown, double oneWay, double[] headsMps) {
    static RoadWind of(TrialInput input, List<List<LevelPass>> ways, boolean isPaired) {
        var passes = ways.stream().flatMap(List::stream).toList();
        var written = passes.stream()
                .flatMap(pass -> input.readings().of(pass.run().id(), "wind-speed").stream())
                .mapToDouble(read -> read.si())
                .max();
        double wind = written.orElse(AssistSpeedRules.V1.windWhenUnknownMps());
        var from = passes.stream()
                .map(pass ->
                        CompassBearing.degrees(input.readings().word(pass.run().id(), "wind-from")))
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .findFirst();
        boolean isKnown = written.isPresent()
                && from.isPresent()
                && passes.stream().allMatch(pass -> pass.heading().isKnown());
        double[] heads = new double[ways.size()];
        for (int i = 0; i < heads.length; i++) {
            if (isKnown) {
                heads[i] = wind * along(ways.get(i), StrictMath.toRadians(from.getAsDouble()));
            } else if (isPaired) {
                heads[i] = (i % 2 == 0 ? 1 : -1) * wind / Math.sqrt(2);
            }
        }
        double oneWay = isPaired ? 0 : WindPart.oneWayShare(passes);
        return new RoadWind(wind, written.isPresent(), isKnown, oneWay, heads);
    }

    /// The share of the wind that blows against a way.
    private static double along(List<LevelPass> way, double fromRadians) {
        double sum = 0;
        for (var pass : way) {
            sum += pass.heading().east() * StrictMath.sin(fromRadians)
                    + pass.heading().north() * StrictMath.cos(fromRadians);
        }
        return sum / way.size();
    }
}
