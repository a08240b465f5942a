package org.measuredmile.trial.braking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.motion.ModelFit.Parameter;

/// Worked examples A1 and A2 of the crew's own study of reduction algorithms (computed there with another program
/// in another language, full convergence), with the tolerances stated there.
class StopFitReferenceTest {
    private static final double TWENTY_MPH = 8.9408;
    private static final double[] A2 = {
        9.17, 9.17, 9.22, 9.18, 9.10, 9.14, 9.11, 9.12, 9.06, 9.11, 8.99, 8.70, 8.11, 7.50, 6.82, 6.30, 5.54, 4.99,
        4.31, 3.65, 3.02, 2.37, 1.75, 1.09, 0.50, 0.04, 0.05, 0.02, 0.07, 0.01
    };

    @Test
    void closedFormOfTheWholeStop() {
        assertThat(new StopCurve(TWENTY_MPH, 0, 0.25, 6, 0).distanceM()).isCloseTo(7.7635, within(0.0005));
        assertThat(new StopCurve(TWENTY_MPH, 0, 0.25, 6, 0.5).distanceM()).isCloseTo(7.5677, within(0.0005));
        assertThat(new StopCurve(TWENTY_MPH, 0, 0, 6, 0).distanceM()).isCloseTo(6.6615, within(0.0005));
        assertThat(new StopCurve(TWENTY_MPH, 0, 0.25, 6, 0).meanFullyDevelopedMps2())
                .isCloseTo(6.0, within(0.0005));
    }

    /// B26 of the physics page: build-up of 0.30 s to 6.0 m/s² from 20 mph; checked there by numerical integration.
    @Test
    void closedFormWithALongerBuildUp() {
        assertThat(new StopCurve(TWENTY_MPH, 0, 0.30, 6, 0).distanceM()).isCloseTo(7.9801, within(0.0001));
    }

    private static Channel samples() {
        double[] times = new double[A2.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = -0.9 + i * 0.1;
        }
        return new Channel(ChannelKind.SPEED, "speed", "m/s", new Channel.Series(times, A2));
    }

    /// The examples' build-up begins from nothing whatever slowed the bike before; the trial's begins from that.
    private static StopFit.Fitted fitted(List<Parameter> parameters) {
        StopFit.Curves curves = values -> StopFit.curveOf(values).beginningFromNothing();
        return switch (StopFit.fit(samples(), 0.087, 0.04, parameters, curves)) {
            case StopFit.Result.Good(var fitted) -> fitted;
            case StopFit.Result.Bad(var why) -> throw new AssertionError(why);
        };
    }

    private static double atTwentyMph(double distanceM, double entryMps) {
        return distanceM * (TWENTY_MPH / entryMps) * (TWENTY_MPH / entryMps);
    }

    private static List<Parameter> started() {
        return StopFit.parameters(9.1, 0.05, 6.3, new StopFit.Priors(0.225, 0.05, 0.3, 0.6, 0.25, 0.25));
    }

    @Test
    void fullFitWithPriors() {
        var fit = fitted(started());
        assertThat(fit.curve().entryMps()).isCloseTo(9.080, within(0.01));
        assertThat(fit.curve().driftMps2()).isCloseTo(-0.120, within(0.01));
        assertThat(fit.onsetS()).isCloseTo(0.038, within(0.01));
        assertThat(fit.curve().buildUpS()).isCloseTo(0.2226, within(0.01));
        assertThat(fit.curve().decelerationMps2()).isCloseTo(6.318, within(0.01));
        assertThat(fit.curve().riseMps3()).isCloseTo(0.114, within(0.01));
        assertThat(fit.filterS()).isCloseTo(0.153, within(0.01));
        assertThat(fit.settled().cost()).isCloseTo(3.644, within(0.005));
        assertThat(fit.curve().distanceM()).isCloseTo(7.478, within(0.01));
        assertThat(atTwentyMph(fit.curve().distanceM(), fit.curve().entryMps())).isCloseTo(7.251, within(0.01));
        assertThat(atTwentyMph(
                        fit.curve().withoutBuildUp().distanceM(), fit.curve().entryMps()))
                .isCloseTo(6.273, within(0.01));
        assertThat(fit.curve().meanFullyDevelopedMps2()).isCloseTo(6.381, within(0.01));
    }

    @Test
    void fullFitWithTheFilterKnown() {
        var parameters = new ArrayList<>(started());
        parameters.set(StopFit.FILTER, Parameter.fixed("receiver's filter", 0.2));
        var fit = fitted(parameters);
        assertThat(atTwentyMph(fit.curve().distanceM(), fit.curve().entryMps())).isCloseTo(7.227, within(0.01));
    }

    /// By steps of a tenth of a millisecond through v̇ = k + (−a − k)·u/t, then −a − j·(u − t).
    @Test
    void whatSlowedTheBikeBeforeGoesOnUntilTheBrakesHaveTakenOver() {
        double step = 1e-4;
        double speed = 9.08;
        double metres = 0;
        for (int i = 0; speed > 0; i++) {
            double u = (i + 0.5) * step;
            double change = u < 0.2226 ? -0.12 + (-6.318 + 0.12) * u / 0.2226 : -6.318 - 0.114 * (u - 0.2226);
            metres += (speed + change * step / 2) * step;
            speed += change * step;
        }
        var curve = new StopCurve(9.08, -0.12, 0.2226, 6.318, 0.114);
        assertThat(curve.distanceM()).isCloseTo(metres, within(0.001));
        assertThat(curve.positionM(curve.durationS())).isCloseTo(metres, within(0.001));
        assertThat(curve.beginningFromNothing().distanceM()).isGreaterThan(metres + 0.01);
        double soonS = curve.reachesS(9.0);
        double gone = 0.12 * soonS + (6.318 - 0.12) * soonS * soonS / (2 * 0.2226);
        assertThat(gone).isCloseTo(0.08, within(1e-9));
    }

    @Test
    void simpleRamp() {
        var parameters = new ArrayList<>(started());
        parameters.set(StopFit.BUILD_UP, Parameter.fixed("build-up time", 0.0001));
        parameters.set(StopFit.FILTER, Parameter.fixed("receiver's filter", 0.02));
        parameters.set(StopFit.RISE, Parameter.fixed("change of deceleration", 0));
        var fit = fitted(parameters);
        assertThat(fit.curve().entryMps()).isCloseTo(9.037, within(0.01));
        assertThat(fit.curve().driftMps2()).isCloseTo(-0.157, within(0.01));
        assertThat(fit.onsetS()).isCloseTo(0.155, within(0.01));
        assertThat(fit.curve().decelerationMps2()).isCloseTo(6.363, within(0.01));
        assertThat(fit.settled().cost()).isCloseTo(4.373, within(0.005));
        assertThat(atTwentyMph(
                        fit.curve().withoutBuildUp().distanceM(), fit.curve().entryMps()))
                .isCloseTo(6.282, within(0.01));
    }
}
