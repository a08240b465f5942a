package org.measuredmile.trial.range;

import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.quantity.statistics.StudentT;
import org.measuredmile.roadload.Gravity;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.RoadSetting;

/// A range at reference conditions, brought to a ride by another rider, in other air, at another speed.
///
/// Formula: R = R_ref·c_ref/c·(1 + δ) with the energies per distance c of the trial's own model, on the level
/// without stops; u(δ) = 0.06·|ln(c_ref/c)|. Each draw of the road load is used for both rides.
/// Shape: `against` says why nothing can be said, and is empty where something can; `value` and `known` hold
/// only then.
/// Error: the road load's part in the figure at reference is drawn anew here, not with it. A bike that rolls worse
/// than was taken went less far at reference than the figure says, and gains less by riding slower: towards slower
/// rides the two lean on each other by 0.4 (draws of usual bikes, hills and winds at 0.7 of their speed, median of
/// 300 rides), which is added; towards faster ones it would take something off, which is left in.
/// Source: as the trial's figures at reference conditions; JCGM 101:2008, clause 7.
public record RangeElsewhere(double ratio, double value, Uncertainty known, String against) {
    private static final RangeRules RULES = RangeRules.V1;
    /// Beyond a factor of two nothing is said. Up to there simulated rides at half the speed were held as often as
    /// nearer ones (docs/coverage.md).
    private static final double MOST_LOG_RATIO = StrictMath.log(2);

    private static final double LEANS = 0.4;

    /// A ride on the level without stops.
    ///
    /// Unit: kilograms with gear, kg/m³; the mean of the speed while riding; the wind's own speed, which
    /// comes from every side round a loop; the rider's power at the wheel.
    public record Ride(double riderKg, double airKgPerM3, double meanMps, double windMps, double riderW) {}

    /// What is known of the bike beside the figure.
    ///
    /// Unit: kilograms; `besidesSd` relative, for what the model leaves out.
    public record Bike(double massKg, double massSdKg, KnownLoad load, double besidesSd) {}

    /// The rider's power that the reference conditions stand for, in watts.
    public static double referenceW(boolean isByThrottle) {
        return isByThrottle ? 0 : RULES.riderW();
    }

    /// A figure at reference conditions, ridden so, as it would be otherwise.
    public static RangeElsewhere of(Figure atReference, Ride reference, Ride wanted, Bike bike) {
        var spreads = new ReferenceRatio.Spreads(bike.massSdKg(), 0, 0, 0, 0, 0);
        var ratio = ReferenceRatio.of(
                conditions(reference, bike.massKg()), conditions(wanted, bike.massKg()), bike.load(), spreads, RULES);
        String against = ratio.reasonAgainst(RULES, MOST_LOG_RATIO);
        double value = atReference.value() * ratio.best();
        if (!against.isEmpty()) {
            return new RangeElsewhere(ratio.best(), value, atReference.anyDay(), against);
        }
        var drawn = ratio.times(atReference.value(), atReference.anyDay(), false);
        return drawn.interval95().high() < Double.POSITIVE_INFINITY
                ? new RangeElsewhere(ratio.best(), value, widened(value, drawn, besides(atReference, ratio, bike)), "")
                : new RangeElsewhere(ratio.best(), value, drawn, "the battery may not be needed at all at that speed");
    }

    /// What is beside the draws, relative: what the model leaves out, and what the correction to reference and
    /// this one have in common.
    private static double besides(Figure atReference, ReferenceRatio ratio, Bike bike) {
        double corrected = atReference.budget().stream()
                .filter(one -> one.input().equals(ReferenceFigure.CORRECTION))
                .mapToDouble(one -> one.standardUncertainty() / Math.abs(atReference.value()))
                .findFirst()
                .orElse(0);
        double shared = ratio.best() > 1 ? 2 * LEANS * corrected * ratio.relativeSd() : 0;
        return Math.sqrt(bike.besidesSd() * bike.besidesSd() + shared);
    }

    private static RideConditions conditions(Ride ride, double bikeKg) {
        var setting =
                new Setting(bikeKg + ride.riderKg(), RoadSetting.TURNING_KG, ride.airKgPerM3(), Gravity.STANDARD_MPS2);
        return new RideConditions(
                setting,
                RangeRun.SPEEDS_VARY * ride.meanMps() * ride.meanMps(),
                1 / ride.meanMps(),
                ride.windMps(),
                0,
                0,
                ride.riderW());
    }

    /// Both arms of the interval with something more in them.
    private static Uncertainty widened(double value, Uncertainty drawn, double relative) {
        double more = StudentT.twoSided95(Double.POSITIVE_INFINITY) * relative * value;
        double below = StrictMath.hypot(Math.max(0, value - drawn.interval95().low()), more);
        double above = StrictMath.hypot(Math.max(0, drawn.interval95().high() - value), more);
        return new Uncertainty(
                StrictMath.hypot(drawn.standard(), relative * value),
                Double.POSITIVE_INFINITY,
                new Interval(value - below, value + above));
    }
}
