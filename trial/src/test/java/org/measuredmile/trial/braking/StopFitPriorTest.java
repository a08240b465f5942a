package org.measuredmile.trial.braking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.motion.ModelFit.Parameter;

/// What a fitted stop says of itself, held to what it means: refitting with one thing moved.
class StopFitPriorTest {
    private static final double SIGMA_MPS = 0.087;
    private static final double REST_MPS = 0.04;
    private static final StopCurve TRUE = new StopCurve(9.1, -0.1, 0.225, 6.3, 0.3);

    /// What a receiver with a window of 0.25 s shows of that stop ten times a second. Without noise the fit
    /// ends where no residual is left, and there its linear covariance is exact.
    private static Channel samples() {
        double[] times = new double[40];
        double[] speeds = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = -1.5 + i * 0.1;
            speeds[i] = Math.hypot(TRUE.meanSpeedMps(times[i] - 0.05, 0.25), REST_MPS);
        }
        return new Channel(ChannelKind.SPEED, "speed", "m/s", new Channel.Series(times, speeds));
    }

    private static StopFit.Fitted fitted(List<Parameter> parameters) {
        return switch (StopFit.fit(samples(), SIGMA_MPS, REST_MPS, parameters)) {
            case StopFit.Result.Good(var fitted) -> fitted;
            case StopFit.Result.Bad(var why) -> throw new AssertionError(why);
        };
    }

    private static StopFit.Fitted with(double buildUpS, double riseMps3, double filterS) {
        return fitted(
                StopFit.parameters(9.1, 0.05, 6.3, new StopFit.Priors(buildUpS, 0.05, riseMps3, 0.6, filterS, 0.25)));
    }

    private static StopFit.Derived distance(StopFit.Fitted fit) {
        return fit.derive(StopCurve::distanceM);
    }

    /// The part of an uncertainty that a prior leaves is what a prior one standard deviation away would change: the
    /// sensitivity of JCGM 100:2008, 5.1.3, taken by refitting with the prior's mean a tenth of its deviation off.
    private static void leavesWhatMovingItChanges(
            Function<StopFit.Derived, Double> part, StopFit.Fitted above, StopFit.Fitted below) {
        double change = (distance(above).value() - distance(below).value()) / 0.2;
        assertThat(Math.abs(change)).isGreaterThan(1e-4);
        assertThat(part.apply(distance(with(0.225, 0.3, 0.25))))
                .isCloseTo(Math.abs(change), within(0.05 * Math.abs(change)));
    }

    @Test
    void thePriorOfTheBuildUpLeavesWhatMovingItChanges() {
        leavesWhatMovingItChanges(StopFit.Derived::fromBuildUp, with(0.230, 0.3, 0.25), with(0.220, 0.3, 0.25));
    }

    @Test
    void thePriorOfTheRiseLeavesWhatMovingItChanges() {
        leavesWhatMovingItChanges(StopFit.Derived::fromRise, with(0.225, 0.36, 0.25), with(0.225, 0.24, 0.25));
    }

    @Test
    void thePriorOfTheFilterLeavesWhatMovingItChanges() {
        leavesWhatMovingItChanges(StopFit.Derived::fromFilter, with(0.225, 0.3, 0.275), with(0.225, 0.3, 0.225));
    }

    /// One standard uncertainty off, all else refitted, costs one more in the sum of squares: the profile of a
    /// likelihood that is normal there (common practice, no source).
    @Test
    void theOnsetIsAsUncertainAsItsProfileSays() {
        var best = with(0.225, 0.3, 0.25);
        for (double sign : new double[] {-1, 1}) {
            var parameters = new ArrayList<>(
                    StopFit.parameters(9.1, 0.05, 6.3, new StopFit.Priors(0.225, 0.05, 0.3, 0.6, 0.25, 0.25)));
            parameters.set(StopFit.ONSET, Parameter.fixed("onset", best.onsetS() + sign * best.onsetSd()));
            assertThat(fitted(parameters).settled().cost() - best.settled().cost())
                    .isCloseTo(1, within(0.2));
        }
    }

    /// The cost is the squares of what the curve shows less the samples, and of the priors: added up here again.
    @Test
    void whatTheCurveShowsIsWhatWasFitted() {
        var fit = with(0.225, 0.3, 0.25);
        double sum = 0;
        var samples = samples();
        for (int i = 0; i < samples.size(); i++) {
            double residual = (fit.shownMps(samples.timeS(i)) - samples.value(i)) / SIGMA_MPS;
            sum += residual * residual;
        }
        double[] values = fit.settled().values();
        sum += Math.pow((values[StopFit.BUILD_UP] - 0.225) / 0.05, 2);
        sum += Math.pow((values[StopFit.RISE] - 0.3) / 0.6, 2);
        sum += Math.pow((values[StopFit.FILTER] - 0.25) / 0.25, 2);
        assertThat(fit.settled().cost()).isCloseTo(sum, within(1e-9));
        assertThat(fit.shownMps(fit.restS() + 1)).isCloseTo(REST_MPS, within(1e-9));
        assertThat(fit.restS()).isCloseTo(fit.onsetS() + fit.curve().durationS(), within(1e-12));
    }

    /// a_level = a − g·sin(atan G): with a grade of 0.75 the sine is 0.6, by hand.
    @Test
    void theSlopeIsTakenOffByItsSine() {
        assertThat(BrakingCorrection.levelDeceleration(8, 0.75)).isCloseTo(8 - 9.80665 * 0.6, within(1e-9));
        assertThat(BrakingCorrection.levelDeceleration(8, -0.75)).isCloseTo(8 + 9.80665 * 0.6, within(1e-9));
    }

    /// Fade is looked for from four runs on: with fewer a line through the runs has one degree of freedom and its
    /// interval covers anything (Student's t of 12.7; JCGM 100:2008, table G.2). House limit.
    @Test
    void stopsThatGrowLongerAreCalledFadeFromFourRunsOn() {
        var three = BrakingDays.day()
                .taped("b-1", "20.0 ft", "20.0 mph")
                .taped("b-2", "21.0 ft", "20.0 mph")
                .taped("b-3", "22.1 ft", "20.0 mph");
        assertThat(three.reduce().figures().getFirst().findings())
                .extracting(Finding::code)
                .doesNotContain("fade", "trend");
        var four = three.taped("b-4", "23.0 ft", "20.0 mph");
        assertThat(four.reduce().figures().getFirst().findings())
                .extracting(Finding::code)
                .contains("fade");
    }
}
