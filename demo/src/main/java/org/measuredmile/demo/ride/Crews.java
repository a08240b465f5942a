package org.measuredmile.demo.ride;

import java.util.random.RandomGenerator;
import org.measuredmile.quantity.statistics.Draw;

/// How crews differ in how evenly they work.
final class Crews {
    private static final int DEGREES_OF_FREEDOM = 12;

    private Crews() {}

    /// A crew's standard deviation as a ratio to the stated one, which was estimated with twelve degrees of
    /// freedom: √(12/χ²).
    static double spread(RandomGenerator random) {
        double chiSquared = 0;
        for (int i = 0; i < DEGREES_OF_FREEDOM; i++) {
            double normal = Draw.normal(random);
            chiSquared += normal * normal;
        }
        return Math.sqrt(DEGREES_OF_FREEDOM / chiSquared);
    }
}
