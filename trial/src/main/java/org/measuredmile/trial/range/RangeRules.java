package org.measuredmile.trial.range;

/// The numbers that the trial's current version works with.
///
/// Unit: relative where nothing else is said; ascent in metres per metre of road. `lost` is the share of the energy of
/// an ascent that a descent does not give back.
/// Source: [house] values, common practice; usable share of 90 to 97 % from memory; the share lost and the draws from
/// studies of our own with simulated rides.
record RangeRules(
        double receiverScale,
        double wheelScale,
        double logScale,
        double wallScale,
        double chargerEfficiency,
        double chargerEfficiencySd,
        double usableShare,
        double usableShareSd,
        double usableMeasuredSd,
        double lost,
        double lostSd,
        double usualAscent,
        double usualAscentSd,
        double riderW,
        double usualRiderSd,
        double typedRiderSd,
        double recordedRiderSd,
        double lapScatter,
        double lapDegrees,
        int fewestLaps,
        double leastUsed,
        double mostMissing,
        double mostLogRatio,
        double efficiencyChange,
        double mostUnbounded,
        int draws) {
    static final RangeRules V1 = new RangeRules(
            0.005, 0.01, 0.015, 0.015, 0.87, 0.03, 0.93, 0.03, 0.015, 0.75, 0.12, 0.004, 0.003, 75, 0.20, 0.05, 0.02,
            0.05, 8, 3, 0.30, 0.10, 0.4, 0.06, 0.025, 20_000);
}
