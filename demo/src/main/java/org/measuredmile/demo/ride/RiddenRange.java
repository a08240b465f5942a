package org.measuredmile.demo.ride;

import java.util.random.RandomGenerator;
import org.measuredmile.quantity.statistics.Draw;

/// A range ride that is made up: what holds the bike back, how fast it went, and what each metre cost.
///
/// Formula: cost = weight·(rolling + rise·kept) + half the air's density times area times (square of speed + half the
/// square of the wind) + speed taken away at each stop − what the rider gives a metre.
/// Unit: kilograms, kg/m³, m/s, metres of rise and stops a metre, watts.
public record RiddenRange(
        double bikeKg,
        double riderKg,
        double airKgPerM3,
        double rolling,
        double areaM2,
        double kept,
        double windMps,
        double risePerM,
        double stopsPerM,
        double riderW,
        Speeds speeds) {
    private static final double G = 9.80665;
    private static final double REFERENCE_RIDER_KG = 80;
    private static final double REFERENCE_AIR = 1.1825;
    private static final double STAND_S = 20;
    private static final double PIECE_S = 60;
    private static final int OTHERS = 400;

    /// The speeds of a ride, one a step, and what they come to.
    public record Speeds(double[] mps, double stepS, double wayM, double ridingS, double meanSquare) {
        static Speeds of(double[] mps, double stepS) {
            double sum = 0;
            double squares = 0;
            int moving = 0;
            for (double speed : mps) {
                sum += speed;
                squares += speed * speed * speed;
                moving += speed > 0.5 ? 1 : 0;
            }
            return new Speeds(mps, stepS, sum * stepS, moving * stepS, squares / sum);
        }
    }

    /// Speeds of a ride of a given way: pieces of a minute around a mean, and now and then a stop.
    public static Speeds speeds(double wayM, double meanMps, double stopsPerM, double stepS, RandomGenerator random) {
        double[] speeds = new double[(int) (4 * wayM / meanMps / stepS)];
        double left = wayM;
        double target = meanMps;
        double pieceS = 0;
        double standS = 0;
        double speed = 0;
        int i = 0;
        while (left > 0 && i < speeds.length) {
            if (pieceS <= 0) {
                target = meanMps * (1 + 0.12 * Draw.normal(random));
                pieceS = PIECE_S;
            }
            if (standS <= 0 && random.nextDouble() < stopsPerM * speed * stepS) {
                standS = STAND_S + 6;
            }
            double wanted = standS > 0 ? 0 : target;
            // As a rider eases on and off: a first-order approach within two seconds.
            speed += (wanted - speed) * stepS / 2;
            speed = wanted == 0 && speed < 0.3 ? 0 : speed;
            speeds[i++] = speed;
            left -= speed * stepS;
            pieceS -= stepS;
            standS -= stepS;
        }
        return Speeds.of(java.util.Arrays.copyOf(speeds, i), stepS);
    }

    /// Joules a metre at the wheel, as ridden.
    public double costJPerM() {
        double weight = (bikeKg + riderKg) * G;
        return weight * (rolling + risePerM * kept)
                + 0.5 * airKgPerM3 * areaM2 * (speeds.meanSquare() + 0.5 * windMps * windMps)
                + stopsPerM * 0.5 * (bikeKg + riderKg) * speeds.meanSquare()
                - riderW * speeds.ridingS() / speeds.wayM();
    }

    /// The same way at a share of each speed.
    RiddenRange slower(double share) {
        var mps = java.util.Arrays.stream(speeds.mps()).map(v -> v * share).toArray();
        var slowly = new Speeds(
                mps,
                speeds.stepS() / share,
                speeds.wayM(),
                speeds.ridingS() / share,
                speeds.meanSquare() * share * share);
        return new RiddenRange(
                bikeKg, riderKg, airKgPerM3, rolling, areaM2, kept, windMps, risePerM, stopsPerM, riderW, slowly);
    }

    /// The same speeds on the level in still air of 20 °C, 100 kPa and 50 % with a rider of 80 kg who gives so
    /// much.
    double referenceCostJPerM(double givenW) {
        return (bikeKg + REFERENCE_RIDER_KG) * G * rolling
                + 0.5 * REFERENCE_AIR * areaM2 * speeds.meanSquare()
                - givenW * speeds.ridingS() / speeds.wayM();
    }

    /// What is open of the ratio of both costs, relative, once what this ride cost is known within `costSd`: the
    /// spread of
    /// the ratio over bikes, winds and rises that could have cost as much, each weighed by how well its cost
    /// agrees.
    double ratioSpread(RandomGenerator random, double costSd) {
        double mine = StrictMath.log(costJPerM());
        double weights = 0;
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < OTHERS; i++) {
            var other = other(random);
            double cost = other.costJPerM();
            double away = (StrictMath.log(cost) - mine) / costSd;
            double weight = StrictMath.exp(-away * away / 2);
            double ratio = cost / other.referenceCostJPerM(riderW);
            weights += weight;
            sum += weight * ratio;
            squares += weight * ratio * ratio;
        }
        double mean = sum / weights;
        return Math.sqrt(Math.max(0, squares / weights - mean * mean)) / mean;
    }

    /// Another bike, wind and rise that nobody who has read the record could tell from these.
    private RiddenRange other(RandomGenerator random) {
        return new RiddenRange(
                Math.max(15, Draw.normal(random, 28, 4)),
                riderKg,
                airKgPerM3,
                Math.max(0.003, Draw.normal(random, 0.009, 0.003)),
                Math.max(0.3, Draw.normal(random, 0.60, 0.09)),
                Math.clamp(Draw.normal(random, 0.75, 0.12), 0, 1),
                windMps * Math.max(0, 1 + 0.2 * Draw.normal(random)),
                risePerM * (1 + 0.1 * Draw.normal(random)),
                stopsPerM,
                riderW,
                speeds);
    }
}
