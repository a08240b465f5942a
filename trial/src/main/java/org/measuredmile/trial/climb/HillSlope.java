package org.measuredmile.trial.climb;

import java.util.List;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.CourseHeights;
import org.measuredmile.recording.day.CourseHeights.Point;
import org.measuredmile.roadload.Profile;
import org.measuredmile.trial.climb.ClimbBasis.Effect;
import org.measuredmile.trial.climb.ClimbBasis.Fall;
import org.measuredmile.trial.climb.ClimbBasis.Move;
import org.measuredmile.trial.climb.ClimbBasis.What;

/// How the height runs between the gates of a hill: as its profile has it, else evenly.
///
/// Unit: metres.
/// Shape: the profile is stretched to the surveyed length, at most 2 %, and tilted to the rise that is used.
/// Valid: between levelled places the road is straight; what lies between them nobody knows.
record HillSlope(CourseHeights heights) {
    static final String EVEN = "an even slope between the gates";
    private static final double STEP_M = 12;
    /// Waves along the hill, from half a wave on, in which errors of single heights are looked at: shorter ones
    /// hardly move a bike's speed.
    private static final int MODES = 4;

    static HillSlope of(Hill hill) {
        return new HillSlope(hill.heights());
    }

    boolean isLevelled() {
        return !heights.isEmpty();
    }

    /// The hill with its height swelling from a phase where the slope is not known, or with its heights
    /// wrong by so many waves.
    Profile along(double lengthM, double riseM, Move move) {
        double swell = move.of(What.SLOPE);
        if (!isLevelled()) {
            return move.what() == What.SLOPE ? swelling(lengthM, riseM, swell) : Profile.even(lengthM, riseM);
        }
        List<Point> points = heights.points();
        double[] along = new double[points.size()];
        double[] height = new double[points.size()];
        double tilt = riseM - heights.riseM();
        for (int i = 0; i < along.length; i++) {
            double share = points.get(i).distanceM() / heights.lengthM();
            along[i] = share * lengthM;
            height[i] = points.get(i).heightM() + tilt * share + wrong(move) * StrictMath.sin(Math.PI * swell * share);
        }
        return isRoad(along, height) ? new Profile(along, height) : Profile.even(lengthM, riseM);
    }

    /// Of errors of n heights, each by itself, a sine along the hill has the standard deviation u·√(2/n).
    private double wrong(Move move) {
        if (move.what() != What.SLOPE) {
            return 0;
        }
        double squares = 0;
        for (var point : heights.points()) {
            squares += point.standardUncertaintyM() * point.standardUncertaintyM();
        }
        int n = heights.points().size();
        return Math.sqrt(squares / n) * Math.sqrt(2.0 / n);
    }

    private static boolean isRoad(double[] along, double[] height) {
        for (int i = 1; i < along.length; i++) {
            if (Math.abs(height[i] - height[i - 1]) >= along[i] - along[i - 1]) {
                return false;
            }
        }
        return true;
    }

    /// A slope of the same rise that swells and eases as unsurveyed slopes do, from a phase in radians.
    private static Profile swelling(double lengthM, double riseM, double phase) {
        int cells = (int) Math.ceil(lengthM / STEP_M);
        double[] along = new double[cells + 1];
        double[] height = new double[cells + 1];
        double wave = ClimbRules.SWELL_WAVE_M / (2 * Math.PI);
        for (int i = 0; i <= cells; i++) {
            along[i] = lengthM * i / cells;
            height[i] = along[i]
                    + ClimbRules.SWELL * wave * (StrictMath.cos(phase) - StrictMath.cos(along[i] / wave + phase));
        }
        double scale = riseM / height[cells];
        for (int i = 0; i <= cells; i++) {
            height[i] *= scale;
        }
        return new Profile(along, height);
    }

    /// What is open of the slope, over the ways in which the drive's force may fall: the root mean square over four
    /// phases of one that swells as slopes do, or of a levelled one the root sum of squares over its waves.
    Contribution open(Effect effect, List<Fall> falls) {
        double squares = 0;
        for (var fall : falls) {
            for (int k = 0; k < MODES; k++) {
                double amount = isLevelled() ? k + 1 : k * Math.PI / 2;
                double one = effect.of(new Move(What.SLOPE, amount, fall.more()), fall.nothing());
                squares += fall.weight() * one * one / (isLevelled() ? 1 : MODES);
            }
        }
        return Contribution.typeB(isLevelled() ? "heights of the profile" : EVEN + " (assumed)", Math.sqrt(squares));
    }
}
