package org.measuredmile.trial.assistspeed;

import java.util.List;
import java.util.OptionalDouble;
import org.measuredmile.quantity.budget.Contribution;

/// What the wind adds to the budget of a level's speed.
///
/// With w the wind's speed and s = dv/dw of the usual road load: the part of a one-way ride, s·w/√2·share (a wind of
/// unknown bearing along the road); what each way's wind differs from that by, s·0.3·w/√ways; and what two ways leave
/// above the calm speed at constant power, between nothing and 0.2 % of v for each (m/s)².
/// Source: the last number is this project's own, for 150 W and the usual road load; the change of 30 % of the wind's
/// speed is a house value.
final class WindPart {
    static final String ALONG = "wind along the road";
    static final String CHANGING = "wind changing";
    /// How much of the day's wind each way's differs from it, a ratio.
    static final double CHANGE = 0.3;
    private static final double ABOVE_CALM = 0.002 / 1.7320508075688772;

    private WindPart() {}

    static List<Contribution> of(double speedMps, OptionalDouble windMps, double oneWayShare, int ways) {
        double wind = windMps.orElse(AssistSpeedRules.V1.windWhenUnknownMps());
        double answer = RoadPrior.perHeadWind(speedMps);
        double along = answer * wind / Math.sqrt(2) * oneWayShare;
        double change = answer * CHANGE * wind / Math.sqrt(ways);
        double above = ABOVE_CALM * wind * wind * speedMps;
        var changing = Contribution.typeB(CHANGING, StrictMath.hypot(change, above));
        return oneWayShare == 0 ? List.of(changing) : List.of(Contribution.typeB(ALONG, along), changing);
    }

    /// How much of the riding went one way: 1 when all of it did or nobody knows, 0 when the ways cancel.
    static double oneWayShare(List<LevelPass> passes) {
        double east = 0;
        double north = 0;
        for (var pass : passes) {
            if (!pass.heading().isKnown()) {
                return 1;
            }
            east += pass.heading().east() / passes.size();
            north += pass.heading().north() / passes.size();
        }
        return Math.min(1, StrictMath.hypot(east, north));
    }
}
