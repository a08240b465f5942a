package org.measuredmile.trial.assistspeed;

import java.util.ArrayList;
import java.util.List;
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
    static final String BEARING = "bearing of the wind";
    /// A compass point is right within half of one, which moves w·cos φ by so much of w.
    private static final double BEARING_SD = 0.1;
    /// What is open of the square of the wind along two ways: of w²·cos² φ with φ uniform, and of
    /// w² read to 30 %.
    private static final double SQUARE_OF_UNKNOWN = 0.71;
    private static final double SQUARE_OF_KNOWN = 0.5;
    private static final double ABOVE_CALM = 0.002 / 1.7320508075688772;

    private WindPart() {}

    /// Where nothing was taken out.
    static List<Contribution> of(RoadPrior road, double speedMps, double wind, double oneWayShare, int ways) {
        double answer = road.perHeadWind(speedMps);
        double along = answer * wind / Math.sqrt(2) * oneWayShare;
        double change = answer * CHANGE * wind / Math.sqrt(ways);
        double above = ABOVE_CALM * wind * wind * speedMps;
        var changing = Contribution.typeB(CHANGING, StrictMath.hypot(change, above));
        return oneWayShare == 0 ? List.of(changing) : List.of(Contribution.typeB(ALONG, along), changing);
    }

    /// What is left of a wind that a model took out.
    static List<Contribution> left(SteadyPower model, RoadWind wind, double speedMps) {
        var still = model.inStillAir();
        var power = model.powerW(speedMps).orElseThrow();
        double slower = still.speedMps(model.ridden(), power, 0.1).orElse(speedMps);
        double faster = still.speedMps(model.ridden(), power, -0.1).orElse(speedMps);
        double answer = (faster - slower) / 0.2;
        int ways = wind.headsMps().length;
        double changing = answer * CHANGE * wind.windMps() / Math.sqrt(ways);
        double square = 0;
        if (ways > 1) {
            double calm = still.speedMps(model.ridden(), power, 0).orElse(speedMps);
            double open = wind.isBearingKnown() ? SQUARE_OF_KNOWN : wind.isWritten() ? SQUARE_OF_UNKNOWN : 1;
            square = open * Math.abs(speedMps - calm);
        }
        var parts = new ArrayList<Contribution>();
        parts.add(Contribution.typeB(CHANGING, StrictMath.hypot(changing, square)));
        if (wind.isBearingKnown()) {
            double open = answer * BEARING_SD * wind.windMps() * wind.oneWay();
            if (open > 0) {
                parts.add(Contribution.typeB(BEARING, open));
            }
        } else if (wind.oneWay() > 0) {
            parts.add(Contribution.typeB(ALONG, answer * wind.windMps() / Math.sqrt(2) * wind.oneWay()));
        }
        return parts;
    }

    /// Whether a part of a budget is one of these.
    static boolean isOne(Contribution part) {
        return List.of(ALONG, CHANGING, BEARING).contains(part.input());
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
