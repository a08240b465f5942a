package org.measuredmile.demo.ride;

/// A bike and rider as they go up a hill.
///
/// The drive pushes with `forceN` at `atMps`, at other speeds with that times (v/atMps)^−fall.
/// Unit: kilograms, newtons, m/s; `wheelsKg` is what the turning of the wheels adds.
public record ClimbedBike(
        double bikeKg,
        double riderKg,
        double wheelsKg,
        double rolling,
        double dragAreaM2,
        double forceN,
        double atMps,
        double fall) {
    double massKg() {
        return bikeKg + riderKg;
    }

    /// The same with so much of the logarithm more force.
    public ClimbedBike stronger(double logarithm) {
        return new ClimbedBike(
                bikeKg, riderKg, wheelsKg, rolling, dragAreaM2, forceN * StrictMath.exp(logarithm), atMps, fall);
    }

    /// The same with another rider.
    public ClimbedBike carrying(double kilograms) {
        return new ClimbedBike(bikeKg, kilograms, wheelsKg, rolling, dragAreaM2, forceN, atMps, fall);
    }

    /// The same as somebody would take it for who has one of its numbers wrong.
    ClimbedBike taken(double moreKg, double moreRolling, double moreAreaM2, double moreFall) {
        return new ClimbedBike(
                bikeKg + moreKg,
                riderKg,
                wheelsKg,
                rolling + moreRolling,
                dragAreaM2 + moreAreaM2,
                forceN,
                atMps,
                fall + moreFall);
    }

    /// The same with as much force at `atMps`, which falls as another power of the speed.
    ClimbedBike falling(double power) {
        return new ClimbedBike(bikeKg, riderKg, wheelsKg, rolling, dragAreaM2, forceN, atMps, power);
    }

    double pushN(double speedMps) {
        return forceN * StrictMath.pow(Math.max(speedMps, 0.25 * atMps) / atMps, -fall);
    }

    /// The push that holds a speed on a slope in still air.
    public static double holdingN(ClimbedBike bike, double speedMps, double sine, double airKgPerM3) {
        double weight = bike.massKg() * 9.80665;
        return weight * (sine + bike.rolling) + airKgPerM3 * bike.dragAreaM2 * speedMps * speedMps / 2;
    }
}
