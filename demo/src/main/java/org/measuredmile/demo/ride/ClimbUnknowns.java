package org.measuredmile.demo.ride;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.function.ToDoubleFunction;

/// The best that a climb can tell of its power and of its time at reference conditions, relative.
///
/// An analyst who has the time of the climb, the course, the rider's mass to 0.5 kg and the wind as written, and for
/// bike, road load and drive the spread that the population has, is left with these by likelihood, linearised: with
/// whatever is not known, the strength of the drive moves so that the time stays what it is. Starts are not taken to
/// tell the power on the hill: whether a drive pushes up a long hill as it does at a start is what is asked.
/// Unit: standard deviations, relative.
record ClimbUnknowns(double ofPower, double ofReference) {
    static final double BIKE_SD_KG = 4;
    static final double ROLLING_SD = 0.003;
    static final double AREA_SD_M2 = 0.09;
    static final double FALL_SD = 0.35;
    static final double RIDER_SD_KG = 0.5;
    private static final double STEP = 0.01;

    /// What somebody takes a climb to be who has one of its numbers wrong by so much.
    record Taken(
            double stronger,
            double bikeKg,
            double riderKg,
            double rolling,
            double areaM2,
            double fall,
            double headMps) {
        private static final Taken RIGHT = new Taken(0, 0, 0, 0, 0, 0, 0);

        /// A bike so taken.
        ClimbedBike bike(ClimbedBike bike) {
            return bike.carrying(bike.riderKg() + riderKg)
                    .taken(bikeKg, rolling, areaM2, fall)
                    .stronger(stronger);
        }
    }

    /// Of a climb as ridden and the same at reference; `timed` is what is open of the mean time, relative. Each
    /// of `unsure` is something moved by its standard deviation.
    static ClimbUnknowns of(
            Function<Taken, RiddenClimb> ridden,
            Function<Taken, RiddenClimb> reference,
            List<Taken> unsure,
            double timed) {
        var power = new Open(ridden, ridden, RiddenClimb::powerW);
        var time = new Open(ridden, reference, RiddenClimb::timeS);
        return new ClimbUnknowns(power.sd(unsure, timed), time.sd(unsure, timed));
    }

    /// The same for an analyst who does not know how the drive's force falls: the mean of the variances over the
    /// three points of the population's spread, each with what that spread itself leaves open.
    static ClimbUnknowns overFalls(IntFunction<ClimbUnknowns> ofPoint) {
        double power = 0;
        double reference = 0;
        for (int point = -1; point <= 1; point++) {
            var one = ofPoint.apply(point);
            double weight = point == 0 ? 4.0 / 6 : 1.0 / 6;
            power += weight * one.ofPower * one.ofPower;
            reference += weight * one.ofReference * one.ofReference;
        }
        return new ClimbUnknowns(Math.sqrt(power), Math.sqrt(reference));
    }

    /// What nobody measured where no bike was weighed and none coasted or started.
    static List<Taken> nothingMeasured(double windSd) {
        return List.of(
                new Taken(0, BIKE_SD_KG, 0, 0, 0, 0, 0),
                new Taken(0, 0, RIDER_SD_KG, 0, 0, 0, 0),
                new Taken(0, 0, 0, ROLLING_SD, 0, 0, 0),
                new Taken(0, 0, 0, 0, AREA_SD_M2, 0, 0),
                new Taken(0, 0, 0, 0, 0, FALL_SD, 0),
                new Taken(0, 0, 0, 0, 0, 0, windSd));
    }

    /// A quantity of one climb, when the time of another is known.
    private static final class Open {
        private final Function<Taken, RiddenClimb> timed;
        private final Function<Taken, RiddenClimb> asked;
        private final ToDoubleFunction<RiddenClimb> quantity;
        private final double timedS;
        private final double value;
        /// Of the logarithm of the quantity with that of the time, when the strength moves both.
        private final double perTime;

        Open(
                Function<Taken, RiddenClimb> timed,
                Function<Taken, RiddenClimb> asked,
                ToDoubleFunction<RiddenClimb> quantity) {
            this.timed = timed;
            this.asked = asked;
            this.quantity = quantity;
            this.timedS = timed.apply(Taken.RIGHT).timeS();
            this.value = quantity.applyAsDouble(asked.apply(Taken.RIGHT));
            var stronger = new Taken(STEP, 0, 0, 0, 0, 0, 0);
            this.perTime = ofQuantity(stronger) / ofTime(stronger);
        }

        private double ofTime(Taken taken) {
            return StrictMath.log(timed.apply(taken).timeS() / timedS);
        }

        private double ofQuantity(Taken taken) {
            return StrictMath.log(quantity.applyAsDouble(asked.apply(taken)) / value);
        }

        double sd(List<Taken> unsure, double timeSd) {
            var squares = new ArrayList<Double>();
            for (var taken : unsure) {
                double left = ofQuantity(taken) - perTime * ofTime(taken);
                squares.add(left * left);
            }
            squares.add(perTime * timeSd * perTime * timeSd);
            return Math.sqrt(squares.stream().mapToDouble(Double::doubleValue).sum());
        }
    }
}
