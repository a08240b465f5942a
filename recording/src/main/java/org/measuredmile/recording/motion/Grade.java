package org.measuredmile.recording.motion;

import java.util.Optional;

/// The grade of a stretch from smoothed heights: the slope of the least-squares line of height on distance.
///
/// Heights err slowly: two of them d metres apart along the road err alike by exp(−d/ℓ). With wᵢ the weights that make
/// the slope of the heights, u² = σ²·Σᵢ Σₖ wᵢ·wₖ·exp(−|dᵢ − dₖ|/ℓ), plus the residuals' own part where it is larger.
/// Unit: rise over run; `standardUncertainty` the same.
/// Source: generalised variance of an ordinary least-squares slope (textbook); sizes of the error are house values.
public record Grade(double value, double standardUncertainty, double overM) {
    private static final int FEWEST = 8;
    private static final int MOST = 400;

    /// How heights err.
    ///
    /// Unit: metres, and metres of road over which an error lasts.
    public record HeightError(double sigmaM, double lengthM) {
        /// By air pressure: a gust or a warming sensor, over half a minute of riding.
        public static final HeightError BAROMETRIC = new HeightError(0.5, 200);
        /// By satellite: twice the error of a position, over a minute and a half of riding.
        public static final HeightError SATELLITE = new HeightError(5, 500);
    }

    /// The grade of heights at distances, or nothing where the stretch is too short to have one.
    public static Optional<Grade> of(double[] distancesM, double[] heightsM, HeightError error) {
        int count = distancesM.length;
        int every = Math.max(1, (count + MOST - 1) / MOST);
        int used = count / every;
        if (used < FEWEST) {
            return Optional.empty();
        }
        double[] distance = new double[used];
        double[] height = new double[used];
        for (int i = 0; i < used; i++) {
            for (int k = 0; k < every; k++) {
                distance[i] += distancesM[i * every + k] / every;
                height[i] += heightsM[i * every + k] / every;
            }
        }
        return fitted(distance, height, error);
    }

    private static Optional<Grade> fitted(double[] distance, double[] height, HeightError error) {
        int n = distance.length;
        double meanD = java.util.Arrays.stream(distance).average().orElse(0);
        double meanH = java.util.Arrays.stream(height).average().orElse(0);
        double square = 0;
        double product = 0;
        for (int i = 0; i < n; i++) {
            square += (distance[i] - meanD) * (distance[i] - meanD);
            product += (distance[i] - meanD) * (height[i] - meanH);
        }
        if (!(square > 0)) {
            return Optional.empty();
        }
        double slope = product / square;
        double residuals = 0;
        double known = 0;
        for (int i = 0; i < n; i++) {
            double residual = height[i] - meanH - slope * (distance[i] - meanD);
            residuals += residual * residual / (n - 2);
            for (int k = 0; k < n; k++) {
                known += (distance[i] - meanD)
                        * (distance[k] - meanD)
                        * StrictMath.exp(-Math.abs(distance[i] - distance[k]) / error.lengthM());
            }
        }
        double factor = known / (square * square);
        double u = Math.sqrt(factor * Math.max(error.sigmaM() * error.sigmaM(), residuals));
        return Optional.of(new Grade(slope, u, distance[n - 1] - distance[0]));
    }
}
