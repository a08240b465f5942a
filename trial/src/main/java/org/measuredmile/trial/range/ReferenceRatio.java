package org.measuredmile.trial.range;

import java.util.Arrays;
import java.util.Locale;
import java.util.random.RandomGenerator;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.budget.MonteCarlo;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;

/// By how much a ride would have gone further at reference conditions: the ratio of modelled energy per distance, each
/// draw of the road load used for both.
///
/// Formula: R_ref = d·c_ride/c_ref·(1 + δ), u(δ) = 0.06·|ln(c_ride/c_ref)| for what the efficiency of motor and battery
/// changes between the two.
/// Shape: `draws` in the order drawn; one that leaves no energy to be taken is infinite, never dropped.
/// Source: JCGM 101:2008, clause 7; tried with simulated rides of known truth (docs/coverage.md).
record ReferenceRatio(double best, double[] draws, double referenceJPerM, double referenceSdJPerM) {
    /// How well the inputs of the ratio are known.
    ///
    /// Unit: kilograms, kg/m³; wind, ascent and the rider's power relative.
    record Spreads(
            double bikeSdKg,
            double riderSdKg,
            double airSdKgPerM3,
            double windSd,
            double ascentSdPerMetre,
            double riderSd) {
        Spreads withRider(double relative) {
            return new Spreads(bikeSdKg, riderSdKg, airSdKgPerM3, windSd, ascentSdPerMetre, relative);
        }
    }

    private static final double REFERENCE_SAYS_LITTLE = 2;

    static ReferenceRatio of(
            RideConditions ride, RideConditions reference, KnownLoad load, Spreads spreads, RangeRules rules) {
        double best = ratio(ride, reference, load.mean(), rules.lost());
        double[] ratios = new double[rules.draws()];
        double[] references = new double[rules.draws()];
        var random = new Seed(20).child("range at reference").stream(0);
        for (int i = 0; i < ratios.length; i++) {
            var drawn = load.draw(random);
            double lost = Math.clamp(Draw.normal(random, rules.lost(), rules.lostSd()), 0, 1);
            double bikeKg = Draw.normal(random, 0, spreads.bikeSdKg());
            var ridden = drawn(ride, spreads, bikeKg + Draw.normal(random, 0, spreads.riderSdKg()), random);
            var compared = reference.withSetting(heavier(reference.setting(), bikeKg));
            double of = EnergyModel.joulesPerMetre(ridden, drawn, lost);
            references[i] = EnergyModel.joulesPerMetre(compared, drawn, lost);
            double ratio = of / references[i];
            boolean isBounded = of > 0 && references[i] > 0;
            double changed = 1 + Draw.normal(random) * rules.efficiencyChange() * Math.abs(StrictMath.log(best));
            ratios[i] = isBounded ? ratio * changed : Double.POSITIVE_INFINITY;
        }
        double mean = EnergyModel.joulesPerMetre(reference, load.mean(), rules.lost());
        return new ReferenceRatio(
                best, ratios, mean, MonteCarlo.ofValues(references).standardUncertainty());
    }

    private static double ratio(RideConditions ride, RideConditions reference, RoadLoad load, double lost) {
        return EnergyModel.joulesPerMetre(ride, load, lost) / EnergyModel.joulesPerMetre(reference, load, lost);
    }

    private static RideConditions drawn(RideConditions ride, Spreads spreads, double massKg, RandomGenerator random) {
        var setting = heavier(ride.setting(), massKg)
                .inAir(Math.max(0.5, Draw.normal(random, ride.setting().airKgPerM3(), spreads.airSdKgPerM3())));
        return ride.withSetting(setting)
                .withWind(ride.windMps() * Math.max(0, Draw.normal(random, 1, spreads.windSd())))
                .withAscent(Math.max(0, Draw.normal(random, ride.ascentPerMetre(), spreads.ascentSdPerMetre())))
                .withRider(ride.riderW() * Math.max(0, Draw.normal(random, 1, spreads.riderSd())));
    }

    private static Setting heavier(Setting setting, double kg) {
        return setting.withMass(Math.max(20, setting.massKg() + kg));
    }

    /// Why no figure at reference conditions can be given; empty text when one can.
    String reasonAgainst(RangeRules rules) {
        return reasonAgainst(rules, rules.mostLogRatio());
    }

    /// The same with another limit of the ratio's logarithm.
    String reasonAgainst(RangeRules rules, double mostLogRatio) {
        if (!(best > 0) || referenceJPerM <= REFERENCE_SAYS_LITTLE * referenceSdJPerM) {
            return String.format(
                    Locale.ROOT,
                    "the rider alone nearly suffices at these speeds: %.1f ± %.1f J/m are left to the battery",
                    referenceJPerM,
                    2 * referenceSdJPerM);
        }
        if (Math.abs(StrictMath.log(best)) > mostLogRatio) {
            return String.format(
                    Locale.ROOT,
                    "the ride's conditions are too far from the reference: a factor of %.2f, between %.2f and"
                            + " %.2f asked",
                    best,
                    StrictMath.exp(-mostLogRatio),
                    StrictMath.exp(mostLogRatio));
        }
        double unbounded = Arrays.stream(draws).filter(Double::isInfinite).count();
        return unbounded > rules.mostUnbounded() * draws.length
                ? String.format(
                        Locale.ROOT,
                        "in %.1f %% of the cases that cannot be excluded the battery is not needed at all",
                        100 * unbounded / draws.length)
                : "";
    }

    /// The mean over what the ratio may be, and that of its inverse: with inputs that are known to a third,
    /// neither is the ratio of the mean inputs.
    ///
    /// Source: JCGM 101:2008, 7.6: the estimate is the mean of the values drawn.
    double expected() {
        return Arrays.stream(draws).filter(Double::isFinite).average().orElse(best);
    }

    double expectedInverse() {
        return Arrays.stream(draws)
                .filter(Double::isFinite)
                .map(ratio -> 1 / ratio)
                .average()
                .orElse(1 / best);
    }

    /// The standard uncertainty of the ratio alone, relative.
    double relativeSd() {
        double[] finite = Arrays.stream(draws).filter(Double::isFinite).toArray();
        return MonteCarlo.ofValues(finite).standardUncertainty() / best;
    }

    /// How well a value times the ratio is known, the value with its own uncertainty.
    ///
    /// Shape: `inverse` where the figure falls as the ratio grows, as energy per distance does.
    Uncertainty times(double value, Uncertainty own, boolean inverse) {
        var random = new Seed(21).child("value at reference").stream(0);
        double[] values = new double[draws.length];
        for (int i = 0; i < values.length; i++) {
            double base = value + own.standard() * Draw.studentT(random, own.degreesOfFreedom());
            values[i] = inverse ? base / draws[i] : base * draws[i];
        }
        Arrays.sort(values);
        double[] finite = Arrays.stream(values).filter(Double::isFinite).toArray();
        int tail = (int) Math.round(0.025 * values.length);
        var interval = new Interval(values[tail], values[values.length - 1 - tail]);
        return new Uncertainty(MonteCarlo.ofValues(finite).standardUncertainty(), Double.POSITIVE_INFINITY, interval);
    }
}
