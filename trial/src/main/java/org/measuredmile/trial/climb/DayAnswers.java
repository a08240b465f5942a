package org.measuredmile.trial.climb;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.measuredmile.roadload.Ride;

/// How a climb's time, its lowest speed and its power answer to what differs from day to day: the strength of the
/// drive and the wind along the hill.
///
/// Shape: differences of the model about the climb.
record DayAnswers(Answer time, Answer lowest, Answer power) {
    private static final double STRONGER = 0.02;
    private static final double WINDIER_MPS = 0.5;

    /// The changes of a quantity's logarithm with that of the drive's strength, and with a metre per second of
    /// wind.
    record Answer(double perStrength, double perMps) {
        /// What it differs by between days, relative.
        double betweenDays() {
            return betweenDays(ClimbRules.WIND_OF_DAYS_SD);
        }

        /// The same where days differ by another wind along the hill, m/s.
        double betweenDays(double windSd) {
            return StrictMath.hypot(byDrive(), perMps * windSd);
        }

        /// The same without what the wind does.
        double byDrive() {
            return Math.abs(perStrength) * ClimbRules.DRIVE_BETWEEN_DAYS;
        }
    }

    /// A climb at a strength of its drive, and how much it counts.
    record Weighted(ClimbModel model, double strength, double weight) {}

    /// The root mean square over climbs that may be the true one, with the sign of the last; nothing where a little
    /// less strength or more wind would stop the bike.
    static Optional<DayAnswers> of(List<Weighted> all) {
        double[] squares = new double[6];
        double[] last = new double[6];
        for (var one : all) {
            var answers = about(one.model(), one.strength());
            if (answers.isEmpty()) {
                return Optional.empty();
            }
            last = answers.get().numbers();
            for (int i = 0; i < last.length; i++) {
                squares[i] += one.weight() * last[i] * last[i];
            }
        }
        for (int i = 0; i < last.length; i++) {
            last[i] = Math.copySign(Math.sqrt(squares[i]), last[i]);
        }
        return Optional.of(new DayAnswers(
                new Answer(last[0], last[1]), new Answer(last[2], last[3]), new Answer(last[4], last[5])));
    }

    private double[] numbers() {
        return new double[] {
            time.perStrength, time.perMps, lowest.perStrength, lowest.perMps, power.perStrength, power.perMps
        };
    }

    private static Optional<DayAnswers> about(ClimbModel model, double strength) {
        var weaker = model.ride(strength * (1 - STRONGER));
        var stronger = model.ride(strength * (1 + STRONGER));
        var against = model.inWind(model.headWindMps() + WINDIER_MPS).ride(strength);
        var behind = model.inWind(model.headWindMps() - WINDIER_MPS).ride(strength);
        if (!weaker.finished() || !against.finished()) {
            return Optional.empty();
        }
        return Optional.of(new DayAnswers(
                answer(weaker, stronger, behind, against, Ride::timeS),
                answer(weaker, stronger, behind, against, ClimbModel::lowestMps),
                answer(weaker, stronger, behind, against, ride -> ride.workJ() / ride.timeS())));
    }

    private static Answer answer(
            Ride weaker, Ride stronger, Ride behind, Ride against, ToDoubleFunction<Ride> quantity) {
        double byStrength = StrictMath.log(quantity.applyAsDouble(stronger) / quantity.applyAsDouble(weaker));
        double byWind = StrictMath.log(quantity.applyAsDouble(against) / quantity.applyAsDouble(behind));
        return new Answer(byStrength / (2 * STRONGER), byWind / (2 * WINDIER_MPS));
    }
}
