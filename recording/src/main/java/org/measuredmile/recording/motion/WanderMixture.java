package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.TDistribution;
import org.measuredmile.quantity.statistics.StudentT;

/// The mean speeds of steady stretches whose wander remembers itself for a time nobody knows: a mixture over that time,
/// weighted by how well each explains the residuals and by what is usual.
///
/// For each memory τ of a grid and each share ρ of white noise, seconds i and k of a stretch correlate as
/// exp(−|tᵢ − tₖ|/τ), plus ρ on the diagonal; every stretch's mean is its generalised least-squares mean, the variance
/// is pooled over all stretches, and the restricted likelihood times a log-normal prior on τ weighs the combination.
/// Unit: metres per second, seconds.
/// Source: this project's study (docs/handbook/assistspeed.md); restricted likelihood after Patterson and Thompson
/// (1971), Biometrika 58, 545–554, from memory.
public final class WanderMixture {
    private static final double[] MEMORY_S = {2, 3, 4.5, 6, 8, 11, 15, 22, 32};
    private static final double[] WHITE_SHARE = {0.02, 0.1, 0.3, 1};
    private static final double PRIOR_MEMORY_S = 14;
    private static final double PRIOR_LOG_SPREAD = 0.6;
    private static final double NEGLIGIBLE_WEIGHT = 1e-7;

    private final List<Component> components = new ArrayList<>();
    private final int degreesOfFreedom;

    /// Seconds and speeds of one steady stretch.
    public record Stretch(double[] timesS, double[] speedMps) {}

    /// A mean speed, its standard uncertainty with degrees of freedom, and the half-width that holds 95 %.
    public record MeanSpeed(
            double speedMps, double standardUncertaintyMps, double degreesOfFreedom, double halfWidthMps) {}

    /// One memory and one share of white noise: means and standard uncertainties of all stretches, and its weight.
    public record Component(
            double memoryS, double whiteShare, double[] meansMps, double[] uncertaintiesMps, double weight) {}

    private WanderMixture(int degreesOfFreedom) {
        this.degreesOfFreedom = degreesOfFreedom;
    }

    /// The mean of each stretch. At least one stretch, each of at least three seconds.
    public static List<MeanSpeed> means(List<Stretch> stretches) {
        var mixture = fit(stretches);
        var means = new ArrayList<MeanSpeed>();
        for (int i = 0; i < stretches.size(); i++) {
            means.add(mixture.mean(i));
        }
        return means;
    }

    /// The mixture's components, weights adding up to 1, those of no weight left out.
    public static List<Component> components(List<Stretch> stretches) {
        return List.copyOf(fit(stretches).components);
    }

    /// One stretch at one memory and one share of white noise, alone.
    public static Component single(Stretch stretch, double memoryS, double whiteShare) {
        return fitted(List.of(stretch), memoryS, whiteShare, stretch.timesS().length - 1);
    }

    /// The variance of the generalised mean of unit-variance values at one memory and share, a ratio.
    public static double varianceFactor(double[] timesS, double memoryS, double whiteShare) {
        return 1
                / Whitened.of(new Stretch(timesS, new double[timesS.length]), memoryS, whiteShare)
                        .information();
    }

    private static WanderMixture fit(List<Stretch> stretches) {
        int seconds = stretches.stream().mapToInt(one -> one.timesS().length).sum();
        var mixture = new WanderMixture(seconds - stretches.size());
        var all = new ArrayList<Component>();
        double largest = Double.NEGATIVE_INFINITY;
        for (double memoryS : MEMORY_S) {
            for (double share : WHITE_SHARE) {
                var one = fitted(stretches, memoryS, share, mixture.degreesOfFreedom);
                all.add(one);
                largest = Math.max(largest, one.weight());
            }
        }
        double sum = 0;
        for (var one : all) {
            sum += StrictMath.exp(one.weight() - largest);
        }
        for (var one : all) {
            double weight = StrictMath.exp(one.weight() - largest) / sum;
            if (weight > NEGLIGIBLE_WEIGHT) {
                mixture.components.add(
                        new Component(one.memoryS(), one.whiteShare(), one.meansMps(), one.uncertaintiesMps(), weight));
            }
        }
        return mixture;
    }

    /// A component whose weight is still the logarithm of prior times restricted likelihood.
    private static Component fitted(List<Stretch> stretches, double memoryS, double share, int degreesOfFreedom) {
        double[] means = new double[stretches.size()];
        double[] information = new double[stretches.size()];
        double residual = 0;
        double logLikelihood = 0;
        for (int i = 0; i < means.length; i++) {
            var whitened = Whitened.of(stretches.get(i), memoryS, share);
            means[i] = whitened.meanMps();
            information[i] = whitened.information();
            residual += whitened.residual();
            logLikelihood -= 0.5 * (whitened.logDeterminant() + StrictMath.log(information[i]));
        }
        // A trace without any wander at all still gets a finite likelihood.
        double variance = Math.max(residual / degreesOfFreedom, 1e-12);
        logLikelihood -= 0.5 * degreesOfFreedom * StrictMath.log(variance);
        double fromPrior = StrictMath.log(memoryS / PRIOR_MEMORY_S) / PRIOR_LOG_SPREAD;
        double[] uncertainties = new double[means.length];
        for (int i = 0; i < means.length; i++) {
            uncertainties[i] = Math.sqrt(variance / information[i]);
        }
        return new Component(memoryS, share, means, uncertainties, logLikelihood - 0.5 * fromPrior * fromPrior);
    }

    private MeanSpeed mean(int stretch) {
        double value = 0;
        for (var one : components) {
            value += one.weight() * one.meansMps()[stretch];
        }
        double halfWidth = halfWidth(stretch, value);
        return new MeanSpeed(value, halfWidth / StudentT.twoSided95(degreesOfFreedom), degreesOfFreedom, halfWidth);
    }

    /// The half-width around the value that holds 95 % of the mixture, by bisection to a millionth of itself.
    private double halfWidth(int stretch, double value) {
        var t = new TDistribution(degreesOfFreedom);
        double low = 0;
        double high = 0;
        double factor = StudentT.twoSided95(degreesOfFreedom);
        for (var one : components) {
            double reach = Math.abs(one.meansMps()[stretch] - value) + 1.5 * factor * one.uncertaintiesMps()[stretch];
            high = Math.max(high, reach);
        }
        while (high - low > 1e-6 * high) {
            double middle = (low + high) / 2;
            if (held(t, stretch, value, middle) < 0.95) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    private double held(TDistribution t, int stretch, double value, double halfWidth) {
        double held = 0;
        for (var one : components) {
            double offset = value - one.meansMps()[stretch];
            double u = one.uncertaintiesMps()[stretch];
            held += one.weight()
                    * (t.cumulativeProbability((offset + halfWidth) / u)
                            - t.cumulativeProbability((offset - halfWidth) / u));
        }
        return held;
    }

    /// One stretch after its correlation has been taken out, second by second.
    ///
    /// Shape: `information` is 1ᵀR⁻¹1, `logDeterminant` ln|R|, `residual` the squared residuals in R⁻¹.
    private record Whitened(double meanMps, double information, double logDeterminant, double residual) {
        static Whitened of(Stretch stretch, double memoryS, double share) {
            double[] timesS = stretch.timesS();
            double[] speed = stretch.speedMps();
            double[] ones = new double[speed.length];
            double[] speeds = new double[speed.length];
            double predictedOne = 0;
            double predictedSpeed = 0;
            double variance = 1;
            double information = 0;
            double product = 0;
            double logDeterminant = 0;
            for (int i = 0; i < speed.length; i++) {
                double innovation = variance + share;
                double root = Math.sqrt(innovation);
                ones[i] = (1 - predictedOne) / root;
                speeds[i] = (speed[i] - speed[0] - predictedSpeed) / root;
                information += ones[i] * ones[i];
                product += ones[i] * speeds[i];
                logDeterminant += StrictMath.log(innovation);
                if (i + 1 < speed.length) {
                    double kept = StrictMath.exp(-(timesS[i + 1] - timesS[i]) / memoryS);
                    double gain = variance / root;
                    predictedOne = kept * (predictedOne + gain * ones[i]);
                    predictedSpeed = kept * (predictedSpeed + gain * speeds[i]);
                    variance = kept * kept * variance * share / innovation + 1 - kept * kept;
                }
            }
            double mean = product / information;
            double residual = 0;
            for (int i = 0; i < speed.length; i++) {
                double one = speeds[i] - mean * ones[i];
                residual += one * one;
            }
            return new Whitened(speed[0] + mean, information, logDeterminant, residual);
        }
    }
}
