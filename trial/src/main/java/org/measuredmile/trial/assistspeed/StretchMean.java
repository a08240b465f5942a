package org.measuredmile.trial.assistspeed;

import java.util.List;
import org.measuredmile.recording.motion.WanderMixture.MeanSpeed;

/// One speed from several stretches of a ride at one level: their mean, each weighed by the seconds it held, known as
/// well as the stretches agree.
///
/// With weights wⱼ that add up to 1, u² is the larger of Σ wⱼ²·uⱼ² and Σ wⱼ²·(vⱼ − v)²·J/(J − 1); the second has
/// J − 1 degrees of freedom.
/// Unit: metres per second.
record StretchMean(double speedMps, double standardUncertaintyMps, double degreesOfFreedom) {
    static StretchMean of(List<SteadyStretch> stretches, List<MeanSpeed> means) {
        double held = stretches.stream().mapToInt(SteadyStretch::heldS).sum();
        double speed = 0;
        for (int j = 0; j < means.size(); j++) {
            speed += stretches.get(j).heldS() / held * means.get(j).speedMps();
        }
        double within = 0;
        double between = 0;
        for (int j = 0; j < means.size(); j++) {
            double weight = stretches.get(j).heldS() / held;
            double u = weight * means.get(j).standardUncertaintyMps();
            double gap = weight * (means.get(j).speedMps() - speed);
            within += u * u;
            between += gap * gap;
        }
        int count = means.size();
        double scatter = count < 2 ? 0 : between * count / (count - 1);
        return scatter > within
                ? new StretchMean(speed, Math.sqrt(scatter), count - 1.0)
                : new StretchMean(speed, Math.sqrt(within), means.getFirst().degreesOfFreedom());
    }
}
