package org.measuredmile.demo.ride;

import java.util.List;
import java.util.function.ToDoubleFunction;

/// Climbs at three points of one thing that scatters normally, √3 standard deviations below, in the middle and as much
/// above: means over it by the three-point rule, which is exact to the fifth power.
record ThreePoints(List<RiddenClimb> climbs) {
    static final double REACH = Math.sqrt(3);

    double mean(ToDoubleFunction<RiddenClimb> quantity) {
        return (at(0, quantity) + 4 * at(1, quantity) + at(2, quantity)) / 6;
    }

    double sd(ToDoubleFunction<RiddenClimb> quantity) {
        double mean = mean(quantity);
        double low = at(0, quantity) - mean;
        double middle = at(1, quantity) - mean;
        double high = at(2, quantity) - mean;
        return Math.sqrt((low * low + 4 * middle * middle + high * high) / 6);
    }

    double middle(ToDoubleFunction<RiddenClimb> quantity) {
        return at(1, quantity);
    }

    private double at(int point, ToDoubleFunction<RiddenClimb> quantity) {
        return quantity.applyAsDouble(climbs.get(point));
    }
}
