package org.measuredmile.trial.coastdown;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.measuredmile.roadload.CoastDown;
import org.measuredmile.roadload.Coasting;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;

/// A coast out and the next one back, solved together: the unit of this trial, because gusts and not samples are its
/// noise.
///
/// Shape: `found` where the pair counts, else `reason` with limit and value.
record CoastPair(CoastRun out, CoastRun back, Optional<CoastDown.Found> found, String reason) {

    /// Solves a pair, wind and grade free as far as a quiet day and a level road allow.
    static CoastPair solved(CoastRun out, CoastRun back) {
        var usual = CoastDown.Before.USUAL;
        var before = new CoastDown.Before(
                usual.rolling(),
                usual.rollingSd(),
                usual.dragAreaM2(),
                usual.dragAreaSdM2(),
                usual.gradeSd(),
                0,
                CoastdownRules.WIND_SD_MPS);
        var setting = setting(out, back);
        var samples = List.of(out.samples(), back.samples());
        var first = CoastDown.fit(samples, setting, before, CoastdownRules.ANY_SD_MPS);
        // What gusts do depends on the wind that they come in: it is looked for first as if they left no trace.
        var fitted = first instanceof CoastDown.Outcome.Settled(CoastDown.Found found)
                ? CoastDown.fit(samples, setting, before, covariances(out, back, samples, found))
                : first;
        return switch (fitted) {
            case CoastDown.Outcome.NotSettled(double cost) ->
                refused(out, back, "the fit did not settle, last cost " + number(cost, 1));
            case CoastDown.Outcome.Settled(CoastDown.Found found) -> judged(out, back, found);
        };
    }

    private static List<double[][]> covariances(
            CoastRun out, CoastRun back, List<CoastDown.Run> samples, CoastDown.Found found) {
        var along = new Coasting.Along(found.grade(), found.headWindMps());
        var setting = setting(out, back);
        return List.of(
                out.covariance(samples.getFirst(), setting, along),
                back.covariance(samples.getLast(), setting, along.back()));
    }

    /// The mean of what both runs moved.
    static Setting setting(CoastRun out, CoastRun back) {
        var one = out.setting().setting();
        var other = back.setting().setting();
        return new Setting(
                (one.massKg() + other.massKg()) / 2,
                (one.turningKg() + other.turningKg()) / 2,
                (one.airKgPerM3() + other.airKgPerM3()) / 2,
                one.gravityMps2());
    }

    private static CoastPair judged(CoastRun out, CoastRun back, CoastDown.Found found) {
        double rolling = found.load().rollingCoefficient();
        double area = found.load().dragAreaM2();
        if (found.reducedChiSquare() > CoastdownRules.MOST_CHI_SQUARE) {
            return refused(
                    out,
                    back,
                    "posture, brake or a change of wind: reduced χ² " + number(found.reducedChiSquare(), 1)
                            + ", at most " + number(CoastdownRules.MOST_CHI_SQUARE, 0));
        }
        if (Math.abs(found.headWindMps()) > CoastdownRules.MOST_WIND_MPS) {
            return refused(
                    out,
                    back,
                    "wind of " + number(Math.abs(found.headWindMps()), 1) + " m/s along the road in the fit, at most "
                            + number(CoastdownRules.MOST_WIND_MPS, 0) + " m/s");
        }
        if (rolling <= CoastdownRules.LEAST_ROLLING || rolling >= CoastdownRules.MOST_ROLLING) {
            return refused(
                    out,
                    back,
                    "rolling coefficient " + number(rolling, 4) + " is outside " + CoastdownRules.LEAST_ROLLING + " to "
                            + CoastdownRules.MOST_ROLLING);
        }
        if (area <= CoastdownRules.LEAST_DRAG_AREA_M2 || area >= CoastdownRules.MOST_DRAG_AREA_M2) {
            return refused(
                    out,
                    back,
                    "drag area " + number(area, 2) + " m² is outside " + CoastdownRules.LEAST_DRAG_AREA_M2 + " to "
                            + CoastdownRules.MOST_DRAG_AREA_M2 + " m²");
        }
        return new CoastPair(out, back, Optional.of(calmed(found, setting(out, back))), "");
    }

    /// The mean of (v + w)² is v² and the gusts' mean square besides, which the fit takes for rolling: it is
    /// taken off.
    private static CoastDown.Found calmed(CoastDown.Found found, Setting setting) {
        double gustsN = setting.airKgPerM3() * found.load().dragAreaM2() * CoastdownRules.GUSTS_M2PS2 / 2;
        double rolling = found.load().rollingCoefficient() - gustsN / setting.massKg() / setting.gravityMps2();
        return new CoastDown.Found(
                new RoadLoad(rolling, found.load().dragAreaM2()),
                found.grade(),
                found.headWindMps(),
                found.startsMps(),
                found.covariance(),
                found.reducedChiSquare(),
                found.onBound());
    }

    private static CoastPair refused(CoastRun out, CoastRun back, String why) {
        return new CoastPair(out, back, Optional.empty(), why);
    }

    private static String number(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value);
    }

    boolean isByHand() {
        return out.isByHand();
    }

    boolean counts() {
        return found.isPresent();
    }

    double highestMps() {
        return Math.min(out.highestMps(), back.highestMps());
    }

    double lowestMps() {
        return Math.max(out.lowestMps(), back.lowestMps());
    }

    /// Whether the speeds lie far enough apart to tell rolling from air.
    boolean tellsApart() {
        return highestMps() >= CoastdownRules.LEAST_SPEED_RATIO * lowestMps()
                && lowestMps() <= CoastdownRules.LOWEST_AT_MOST_MPS;
    }

    /// The force on the level in still air at a speed, where the pair went through it.
    Optional<Double> forceN(double speedMps, Setting setting) {
        boolean inside = speedMps <= highestMps() + 0.3 && speedMps >= lowestMps() - 0.3;
        return found.filter(_ -> inside).map(one -> one.load().forceN(setting, speedMps));
    }
}
