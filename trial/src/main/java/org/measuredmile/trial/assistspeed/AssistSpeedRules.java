package org.measuredmile.trial.assistspeed;

import org.measuredmile.recording.motion.ChangePoints;

/// The numbers of the method, each with what it rests on.
///
/// Unit: in the name. Changing one is a new version of the trial.
/// Source: where not said otherwise, tried on simulated rides by this project (docs/handbook/assistspeed.md).
record AssistSpeedRules(
        double standingBelowMps,
        double leastSpeedMps,
        double mostSpeedMps,
        int leastHeldS,
        int leastShownS,
        int trimS,
        int longestGapS,
        int longestPauseS,
        double slowestStepS,
        double mostSlopeMps2,
        double mostSpreadMps,
        int longestHeldValueS,
        int shortestTransitionS,
        int longestTransitionS,
        double transitionCostPerS,
        double skippedCostPerS,
        double usualWanderMps,
        double usualMemoryS,
        double mergeBelowMps,
        double mostWindMps,
        double windWhenUnknownMps) {
    /// Slope, hold and wind limit: the trial's defaults. Wind limit 3 m/s also in EN 15194 for speed tests, from
    /// memory.
    static final AssistSpeedRules V1 = new AssistSpeedRules(
            1.0, 2.0, 20.0, 8, 5, 1, 2, 30, 1.1, 0.05, 0.6, 12, 2, 10, 0.05, 0.25, 0.15, 8.0, 0.25, 3.0, 2.0);

    /// What one more change must save to be believed, in (m/s)²: speeds a second apart are not independent.
    double changePenalty(int seconds) {
        return new ChangePoints.Wander(usualWanderMps, usualMemoryS).penalty(seconds, 1);
    }
}
