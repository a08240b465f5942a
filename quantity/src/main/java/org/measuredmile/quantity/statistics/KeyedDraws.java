package org.measuredmile.quantity.statistics;

import java.util.random.RandomGenerator;

/// A stream of draws that its key alone decides, quick enough for draws by the hundred million.
///
/// Shape: streams of different keys are unrelated, so that who draws what, in which order and on which thread changes
/// nothing; the same bits on every machine.
/// Source: the generator is that of Steele, Lea and Flood, OOPSLA 2014 (a Weyl sequence and a finaliser); normal draws
/// by the ziggurat of Marsaglia and Tsang, Journal of Statistical Software 5 (2000) 8, with 128 layers and the layer
/// and
/// the place in it from different bits, as Doornik (2005, An improved ziggurat method) asks; gamma draws by Marsaglia
/// and Tsang, ACM Transactions on Mathematical Software 26 (2000) 363–372, with their squeeze.
public final class KeyedDraws implements RandomGenerator {
    private static final long WEYL = 0x9e3779b97f4a7c15L;
    private static final int LAYERS = 128;
    /// Where the tail begins, and the area of each layer (Marsaglia and Tsang 2000, for 128 layers).
    private static final double TAIL = 3.442619855899;
    private static final double AREA = 9.91256303526217e-3;
    /// The right edge of each layer, the lowest first; the last entry is the top of the bell.
    private static final double[] EDGE = new double[LAYERS + 1];
    /// The share of a layer that lies wholly under the bell.
    private static final double[] INSIDE = new double[LAYERS];
    private static final double SQUEEZE = 0.0331;

    static {
        double height = StrictMath.exp(-TAIL * TAIL / 2);
        EDGE[0] = AREA / height;
        EDGE[1] = TAIL;
        for (int i = 2; i < LAYERS; i++) {
            EDGE[i] = Math.sqrt(-2 * StrictMath.log(AREA / EDGE[i - 1] + height));
            height = StrictMath.exp(-EDGE[i] * EDGE[i] / 2);
        }
        for (int i = 0; i < LAYERS; i++) {
            INSIDE[i] = EDGE[i + 1] / EDGE[i];
        }
    }

    private long state;

    /// The stream of a key within a seed.
    public KeyedDraws(Seed seed, long key) {
        state = mixed(seed.value() + WEYL * (mixed(key) | 1));
    }

    private static long mixed(long bits) {
        long mixed = (bits ^ (bits >>> 30)) * 0xbf58476d1ce4e5b9L;
        mixed = (mixed ^ (mixed >>> 27)) * 0x94d049bb133111ebL;
        return mixed ^ (mixed >>> 31);
    }

    @Override
    public long nextLong() {
        state += WEYL;
        return mixed(state);
    }

    /// From the rectangular distribution above 0, 1 included.
    private double aboveZero() {
        return ((nextLong() >>> 11) + 1) * 0x1.0p-53;
    }

    /// From the standard normal distribution.
    public double normal() {
        while (true) {
            long bits = nextLong();
            int layer = (int) (bits & (LAYERS - 1));
            double share = (bits >> 11) * 0x1.0p-52;
            if (Math.abs(share) < INSIDE[layer]) {
                return share * EDGE[layer];
            }
            if (layer == 0) {
                return share < 0 ? -tail() : tail();
            }
            double x = share * EDGE[layer];
            double low = StrictMath.exp((x * x - EDGE[layer] * EDGE[layer]) / 2);
            double high = StrictMath.exp((x * x - EDGE[layer + 1] * EDGE[layer + 1]) / 2);
            if (high + aboveZero() * (low - high) < 1) {
                return x;
            }
        }
    }

    private double tail() {
        while (true) {
            double beyond = -StrictMath.log(aboveZero()) / TAIL;
            if (-2 * StrictMath.log(aboveZero()) >= beyond * beyond) {
                return TAIL + beyond;
            }
        }
    }

    /// Puts into an array draws from Student's t distribution, scaled and moved: centre + scale · t.
    ///
    /// Valid: degrees of freedom of at least 1; infinite ones give the normal distribution.
    public void studentT(double[] into, int from, int count, Scaled scaled) {
        double halfDegrees = scaled.degreesOfFreedom() / 2;
        if (scaled.degreesOfFreedom() == Double.POSITIVE_INFINITY) {
            for (int i = from; i < from + count; i++) {
                into[i] = scaled.centre() + scaled.scale() * normal();
            }
            return;
        }
        // A gamma variable of a shape below 1 is one of a shape above, made smaller.
        boolean isBoosted = halfDegrees < 1;
        double d = (isBoosted ? halfDegrees + 1 : halfDegrees) - 1.0 / 3;
        double c = 1 / Math.sqrt(9 * d);
        for (int i = from; i < from + count; i++) {
            double normal = normal();
            double gamma = gamma(d, c);
            if (isBoosted) {
                gamma *= StrictMath.pow(aboveZero(), 1 / halfDegrees);
            }
            into[i] = scaled.centre() + scaled.scale() * normal * Math.sqrt(halfDegrees / gamma);
        }
    }

    /// A t variable that is scaled and moved.
    public record Scaled(double centre, double scale, double degreesOfFreedom) {}

    private double gamma(double d, double c) {
        while (true) {
            double x = normal();
            double root = 1 + c * x;
            if (root <= 0) {
                continue;
            }
            double cube = root * root * root;
            double square = x * x;
            double u = aboveZero();
            boolean isUnder = u < 1 - SQUEEZE * square * square
                    || StrictMath.log(u) < square / 2 + d - d * cube + d * StrictMath.log(cube);
            if (isUnder) {
                return d * cube;
            }
        }
    }
}
