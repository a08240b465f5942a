package org.measuredmile.demo.ride;

/// How well the best of analysts could know the speed of an assist level from one day's records.
///
/// The analyst knows the wander and its memory, the wind's strength, on half the days its bearing as a compass point,
/// and how the wind changes from way to way; of receiver, masses and road load what is written, else what is usual. Of
/// the speed itself nothing is known beforehand.
/// Shape: standard deviations; where a wind of unknown bearing is most of it, 1/1.96 of the half-width that holds 95 %.
/// Unit: m/s; `angle` between the wind's origin and the way out.
record BestOfLevels(
        int ways, double wanderMps, double memoryS, double windMps, double angle, boolean isBearingWritten) {
    private static final double SCALE_SD = 0.002;
    private static final double WIND_CHANGE = 0.3;
    private static final double POINT_SD = Math.toRadians(22.5) / Math.sqrt(12);
    private static final double ROLLING_SD = 0.003;
    private static final double AREA_SD_M2 = 0.09;
    private static final double BIKE_SD_KG = 4;
    private static final double RIDER_SD_KG = 0.5;
    private static final double NORMAL_95 = 1.959963984540054;

    /// As measured: level road, still air, the day's rider and air.
    double asMeasuredSd(AssistedBike bike, int level, double effortW) {
        double calm = bike.settlesAtMps(level, effortW, 0);
        double against = bike.settlesAtMps(level, effortW, 0.5);
        double behind = bike.settlesAtMps(level, effortW, -0.5);
        double answer = behind - against;
        double bow = 2 * (against + behind - 2 * calm);
        double heldS = LevelRide.USUAL_HOLD_S;
        double wander = wanderMps * Math.sqrt(2 * memoryS / (2 * memoryS + heldS) / ways);
        double changing = answer * WIND_CHANGE * windMps / Math.sqrt(ways);
        double even = StrictMath.hypot(StrictMath.hypot(wander, changing), SCALE_SD * calm);
        if (ways > 1) {
            // Of cos² φ the variance is 1/8 where nobody knows φ.
            return isBearingWritten ? even : StrictMath.hypot(even, bow * windMps * windMps / Math.sqrt(8));
        }
        return isBearingWritten
                ? StrictMath.hypot(even, answer * windMps * StrictMath.sin(angle) * POINT_SD)
                : halfWidth(answer * windMps, even) / NORMAL_95;
    }

    /// At reference: what masses, load and effort leave open of the way there comes to it.
    double atReferenceSd(AssistedBike bike, AssistedBike reference, int level, double effortW) {
        double calm = bike.settlesAtMps(level, effortW, 0);
        double there = brought(bike, reference, calm);
        double rolling = brought(bike.on(ROLLING_SD, 0), reference.on(ROLLING_SD, 0), calm) - there;
        double area = brought(bike.on(0, AREA_SD_M2), reference.on(0, AREA_SD_M2), calm) - there;
        double ofBike = brought(bike.heavier(BIKE_SD_KG), reference.heavier(BIKE_SD_KG), calm) - there;
        double ofRider = brought(bike.heavier(RIDER_SD_KG), reference, calm) - there;
        double way = StrictMath.hypot(StrictMath.hypot(rolling, area), StrictMath.hypot(ofBike, ofRider));
        return StrictMath.hypot(asMeasuredSd(bike, level, effortW) * there / calm, way);
    }

    private static double brought(AssistedBike bike, AssistedBike reference, double speedMps) {
        return reference.powered(bike.powerW(speedMps)).settlesAtMps(1, 0, 0);
    }

    /// The half-width that holds 95 % of A·cos φ, φ uniform, plus a normal error, by halving.
    static double halfWidth(double amplitude, double sd) {
        double low = 0;
        double high = amplitude + 6 * sd;
        for (int i = 0; i < 50; i++) {
            double middle = (low + high) / 2;
            if (held(middle, amplitude, sd) < 0.95) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    private static double held(double reach, double amplitude, double sd) {
        double sum = 0;
        double weights = 0;
        for (int i = -200; i <= 200; i++) {
            double z = i * 0.03;
            double weight = StrictMath.exp(-z * z / 2);
            sum += weight * (below(reach - sd * z, amplitude) - below(-reach - sd * z, amplitude));
            weights += weight;
        }
        return sum / weights;
    }

    /// The chance that A·cos φ is below a value.
    private static double below(double value, double amplitude) {
        if (amplitude == 0) {
            return value > 0 ? 1 : 0;
        }
        return 1 - StrictMath.acos(Math.clamp(value / amplitude, -1, 1)) / Math.PI;
    }
}
