package org.measuredmile.trial.range;

import java.util.Optional;
import org.measuredmile.quantity.budget.MonteCarlo;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.roadload.RoadLoad;

/// How much further the same energy goes when every speed is a tenth lower.
///
/// Unit: relative; standard uncertainty alike. What the rider gives stays the same in watts.
record SlowerRide(double best, double standardUncertainty) {
    private static final double SLOWER = 0.9;

    /// The gain at these conditions; nothing where the rider alone nearly suffices.
    static Optional<SlowerRide> of(RideConditions ride, KnownLoad load, RangeRules rules) {
        double best = gain(ride, load.mean(), rules.lost());
        double[] gains = new double[rules.draws() / 10];
        var random = new Seed(22).child("a tenth slower").stream(0);
        for (int i = 0; i < gains.length; i++) {
            double lost = Math.clamp(Draw.normal(random, rules.lost(), rules.lostSd()), 0, 1);
            gains[i] = gain(ride, load.draw(random), lost);
            if (!Double.isFinite(gains[i])) {
                return Optional.empty();
            }
        }
        double sd = MonteCarlo.ofValues(gains).standardUncertainty();
        return Double.isFinite(best) && best > 2 * sd ? Optional.of(new SlowerRide(best, sd)) : Optional.empty();
    }

    private static double gain(RideConditions ride, RoadLoad load, double lost) {
        double now = EnergyModel.joulesPerMetre(ride, load, lost);
        double slower = EnergyModel.joulesPerMetre(ride.faster(SLOWER), load, lost);
        return now > 0 && slower > 0 ? now / slower - 1 : Double.NaN;
    }
}
