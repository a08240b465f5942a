package org.measuredmile.demo.ride;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/// What an ideal analyst can tell from the records of a day of starts, three each way: the
/// Cramér–Rao bound.
///
/// He has the same records, by a receiver of 10 Hz with its noise or by a watch with its own; knows
/// of thrust, power, build-up, bike, wheels, road load, road, wind and instruments what the
/// population's means and spreads tell; knows exactly how runs and days of this bike scatter; and
/// uses all of it by likelihood. Everything is linearised about the day's own bike on level road.
///
/// Formula: covariance = (Σ JᵀC⁻¹J + P⁻¹)⁻¹, J the observations' answers to each unknown, C what
/// differs between runs (noise, thrust, build-up, moment of starting), P what was known before.
/// Source: van Trees, Detection, Estimation, and Modulation Theory I, section 2.4.3 (bound with
/// prior knowledge), from memory.
final class BestStart {
    /// Half of the day's runs each way.
    private static final int RUNS_A_WAY = 3;
    private static final double RATE_HZ = 10;
    private static final int MOST_SAMPLES = 240;
    private static final double BEFORE_S = 0.4;
    /// Variance of the kernels of the receivers of [SimulatedStart#receiver], their mean and its
    /// spread, s²: 0 for three in ten, 0.2²/12 and 0.4²/12 for two each, 0.15² for the rest. Their
    /// delay shifts all times alike.
    private static final double FILTER_S2 = 0.0101;
    private static final double FILTER_SD_S2 = 0.0093;
    private static final double BUILD_UP_RUN_SD = 0.03;
    private static final double WATCH_RUN_SD = 0.1;
    private static final double WATCH_ALIKE_SD = StrictMath.hypot(0.05, 0.2);
    private static final double DISPLAY_SCALE_SD = 0.01;
    private static final double RECEIVER_SCALE_SD = 0.002;
    private static final double WHITE_MPS = ReceiverModel.Noise.OPEN_SKY.whiteMps();
    private static final double LASTING_MPS = ReceiverModel.Noise.OPEN_SKY.correlatedMps();
    private static final double NOISE_LASTS_S = ReceiverModel.Noise.OPEN_SKY.correlationS();
    /// Nothing but its own samples says when a start began.
    private static final double MOMENT_SD = 10;
    private static final double REFERENCE_RIDER_KG = 80;
    private static final double MPH_MPS = 0.44704;
    private static final RealMatrix NOISE = noise();

    /// What the day's records leave unknown: its spread in the population, and what so much more of
    /// it makes of a bike and of a road.
    private enum Unknown {
        THRUST(0.152),
        POWER(0.107),
        BUILD_UP(0.1155),
        BIKE(4),
        WHEELS(1),
        ROLLING(0.003),
        DRAG_AREA(0.09),
        SLOPE(0.003),
        WIND(0.7);

        private static final double STEP = 0.05;
        private final double sd;

        Unknown(double sd) {
            this.sd = sd;
        }

        private double step() {
            return STEP * sd;
        }

        /// With a twentieth of its spread more.
        private StartedBike more(StartedBike of) {
            return new StartedBike(
                    of.thrustMps2() * (this == THRUST ? 1 + step() : 1),
                    of.powerWpkg() * (this == POWER ? 1 + step() : 1),
                    of.buildUpS() + (this == BUILD_UP ? step() : 0),
                    of.riderKg(),
                    of.bikeKg() + (this == BIKE ? step() : 0),
                    of.wheelsKg() + (this == WHEELS ? step() : 0),
                    of.rolling() + (this == ROLLING ? step() : 0),
                    of.dragAreaM2() + (this == DRAG_AREA ? step() : 0),
                    of.runScatter(),
                    of.dayScatter());
        }

        private RiddenStart.Road road() {
            return new RiddenStart.Road(this == SLOPE ? step() : 0, this == WIND ? step() : 0);
        }
    }

    private static final int UNKNOWNS = Unknown.values().length;
    /// Besides those: the scale of the speed, and what else the instrument does, an unknown filter
    /// or lateness.
    private static final int SCALE = UNKNOWNS;
    private static final int INSTRUMENT = UNKNOWNS + 1;

    /// A start for each unknown with a twentieth of its spread more, and last the one of what the
    /// bike really is; the same under the reference rider.
    private final List<RiddenStart> asRidden;

    private final List<RiddenStart> atReference;
    private final double runScatter;
    private final RealMatrix covariance;

    private BestStart(StartedBike today, boolean byTrace) {
        asRidden = rides(today, today.riderKg());
        atReference = rides(today, REFERENCE_RIDER_KG);
        runScatter = today.runScatter();
        covariance = byTrace ? traced() : watched();
    }

    static BestStart byTrace(StartedBike today) {
        return new BestStart(today, true);
    }

    static BestStart byWatch(StartedBike today) {
        return new BestStart(today, false);
    }

    /// The standard deviation that is left of a quantity of the day's bike on level road in still
    /// air.
    double sd(ToDoubleFunction<RiddenStart> quantity, boolean underReferenceRider) {
        var rides = underReferenceRider ? atReference : asRidden;
        double level = quantity.applyAsDouble(rides.getLast());
        double[] gradient = new double[UNKNOWNS + 2];
        for (int i = 0; i < Unknown.SLOPE.ordinal(); i++) {
            gradient[i] = (quantity.applyAsDouble(rides.get(i)) - level) / Unknown.STEP;
        }
        var column = MatrixUtils.createRealVector(gradient);
        return Math.sqrt(column.dotProduct(covariance.operate(column)));
    }

    private static List<RiddenStart> rides(StartedBike today, double riderKg) {
        var rides = new ArrayList<RiddenStart>();
        for (var unknown : Unknown.values()) {
            rides.add(RiddenStart.of(unknown.more(today).riddenBy(riderKg), unknown.road()));
        }
        rides.add(RiddenStart.of(today.riddenBy(riderKg), RiddenStart.Road.LEVEL));
        return rides;
    }

    private RiddenStart level() {
        return asRidden.getLast();
    }

    /// What each observation answers to a spread of each unknown; those of the instrument are still
    /// 0.
    private double[][] answers(Function<RiddenStart, double[]> observed) {
        double[] level = observed.apply(level());
        double[][] answers = new double[level.length][UNKNOWNS + 2];
        for (int k = 0; k < UNKNOWNS; k++) {
            double[] other = observed.apply(asRidden.get(k));
            for (int i = 0; i < level.length; i++) {
                answers[i][k] = (other[i] - level[i]) / Unknown.STEP;
            }
        }
        return answers;
    }

    /// What it answers to a spread of what differs from run to run: thrust and power together,
    /// build-up, and the moment of starting.
    private double[] ofRun(double[] answers, double perSecondLater) {
        return new double[] {
            runScatter * (answers[0] / Unknown.THRUST.sd + answers[1] / Unknown.POWER.sd),
            BUILD_UP_RUN_SD * answers[2] / Unknown.BUILD_UP.sd,
            MOMENT_SD * perSecondLater
        };
    }

    private RealMatrix watched() {
        double[] marks = {10 * MPH_MPS, 15 * MPH_MPS, 20 * MPH_MPS};
        var answers = answers(ride -> Arrays.stream(marks).map(ride::timeToS).toArray());
        double[][] own = new double[marks.length][];
        for (int i = 0; i < marks.length; i++) {
            double further = level().timeToS(marks[i] * (1 + Unknown.STEP * DISPLAY_SCALE_SD));
            answers[i][SCALE] = (further - level().timeToS(marks[i])) / Unknown.STEP;
            answers[i][INSTRUMENT] = WATCH_ALIKE_SD;
            own[i] = ofRun(answers[i], 0);
        }
        var white = MatrixUtils.createRealIdentityMatrix(marks.length).scalarMultiply(WATCH_RUN_SD);
        return covariance(white, answers, own);
    }

    private RealMatrix traced() {
        double widthS = Math.sqrt(12 * FILTER_S2);
        double untilS = level().speedMps().length * RiddenStart.STEP_S - widthS;
        int samples = (int) Math.min(MOST_SAMPLES, (untilS + BEFORE_S) * RATE_HZ);
        double[] shown = shown(level(), samples, widthS);
        double[] wider = shown(level(), samples, Math.sqrt(12 * (FILTER_S2 + Unknown.STEP * FILTER_SD_S2)));
        var answers = answers(ride -> shown(ride, samples, widthS));
        double[][] own = new double[samples][];
        for (int i = 0; i < samples; i++) {
            answers[i][SCALE] = RECEIVER_SCALE_SD * shown[i];
            answers[i][INSTRUMENT] = (wider[i] - shown[i]) / Unknown.STEP;
            int before = Math.max(0, i - 1);
            int after = Math.min(samples - 1, i + 1);
            own[i] = ofRun(answers[i], -(shown[after] - shown[before]) * RATE_HZ / (after - before));
        }
        return covariance(NOISE, answers, own);
    }

    /// The speeds of a start seen ten times a second through the mean of so long a while around
    /// each moment.
    private static double[] shown(RiddenStart start, int samples, double widthS) {
        var ride = new TrueRide(RiddenStart.STEP_S, start.speedMps(), start.distanceM());
        double[] shown = new double[samples];
        for (int i = 0; i < samples; i++) {
            double timeS = i / RATE_HZ - BEFORE_S;
            shown[i] = (ride.distanceAtM(timeS + widthS / 2) - ride.distanceAtM(timeS - widthS / 2)) / widthS;
        }
        return shown;
    }

    /// The lower triangle whose product with itself turned is the covariance of a receiver's noise.
    private static RealMatrix noise() {
        double[][] c = new double[MOST_SAMPLES][MOST_SAMPLES];
        for (int i = 0; i < MOST_SAMPLES; i++) {
            for (int j = 0; j < MOST_SAMPLES; j++) {
                double kept = StrictMath.exp(-Math.abs(i - j) / RATE_HZ / NOISE_LASTS_S);
                c[i][j] = LASTING_MPS * LASTING_MPS * kept + (i == j ? WHITE_MPS * WHITE_MPS : 0);
            }
        }
        return new CholeskyDecomposition(MatrixUtils.createRealMatrix(c)).getL();
    }

    /// Of all unknowns, in their spreads: three runs out and three back, for which slope and wind
    /// turn their signs.
    private static RealMatrix covariance(RealMatrix noise, double[][] answers, double[][] own) {
        var out = ofOneWay(noise, answers, own);
        var turned = MatrixUtils.createRealIdentityMatrix(UNKNOWNS + 2);
        turned.setEntry(Unknown.SLOPE.ordinal(), Unknown.SLOPE.ordinal(), -1);
        turned.setEntry(Unknown.WIND.ordinal(), Unknown.WIND.ordinal(), -1);
        var information = out.add(turned.multiply(out).multiply(turned))
                .scalarMultiply(RUNS_A_WAY)
                .add(MatrixUtils.createRealIdentityMatrix(UNKNOWNS + 2));
        return new CholeskyDecomposition(information, 1e-9, 0).getSolver().getInverse();
    }

    /// The information in one run, when what is its own is known by its spread alone.
    private static RealMatrix ofOneWay(RealMatrix noise, double[][] answers, double[][] own) {
        var common = whitened(noise, answers);
        var alone = whitened(noise, own);
        var both = common.transposeMultiply(alone);
        var ownInformation =
                alone.transposeMultiply(alone).add(MatrixUtils.createRealIdentityMatrix(alone.getColumnDimension()));
        var inverse =
                new CholeskyDecomposition(ownInformation, 1e-9, 0).getSolver().getInverse();
        return common.transposeMultiply(common).subtract(both.multiply(inverse).multiplyTransposed(both));
    }

    /// Divided by the triangle of the noise, from its first row on.
    private static RealMatrix whitened(RealMatrix noise, double[][] rows) {
        double[][] white = new double[rows.length][rows[0].length];
        for (int i = 0; i < rows.length; i++) {
            for (int k = 0; k < rows[0].length; k++) {
                double left = rows[i][k];
                for (int j = 0; j < i; j++) {
                    left -= noise.getEntry(i, j) * white[j][k];
                }
                white[i][k] = left / noise.getEntry(i, i);
            }
        }
        return MatrixUtils.createRealMatrix(white);
    }
}
