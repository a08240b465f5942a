package org.measuredmile.trial.braking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.trial.GivenDay.figure;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.GivenDay;
import org.measuredmile.trial.RunResult.RunValue;

/// What the runs of a braking day share, by hand from the house values of the handbook page.
class BrakingBudgetTest {
    private static final String VARIANT = "nominal=20-mph surface=dry";
    private static final double TWENTY_MPH = 8.9408;

    private static GivenDay taped(String instrument) {
        var day = GivenDay.of(new Braking()).checked();
        for (String id : new String[] {"a", "b", "c"}) {
            day.run(id, "method=tape " + VARIANT, "")
                    .reading(id, "entry-speed", "20 mph", instrument)
                    .reading(id, "stopping-distance", "6.0 m");
        }
        return day;
    }

    private static GivenDay traced(Channel speed, String instrument, Channel... besides) {
        var channels = new Channel[1 + besides.length];
        channels[0] = speed;
        System.arraycopy(besides, 0, channels, 1, besides.length);
        var day = GivenDay.of(new Braking()).checked();
        for (String id : new String[] {"a", "b", "c"}) {
            day.run(id, "method=trace " + VARIANT, "");
        }
        return day.recording(BrakingDays.recording("a.csv", channels), instrument, "a", "b", "c");
    }

    private static SteppedRide stops() {
        return new SteppedRide().stop(TWENTY_MPH, 6).stop(TWENTY_MPH, 6).stop(TWENTY_MPH, 6);
    }

    private static Channel ofWheel(Channel speed) {
        return new Channel(ChannelKind.WHEEL_SPEED, "wheel", "m/s", new Channel.Series(speed.timesS(), speed.values()));
    }

    private static double share(Figure figure, String input) {
        return figure.budget().stream()
                .filter(one -> one.input().equals(input))
                .mapToDouble(Contribution::standardUncertainty)
                .findFirst()
                .orElseThrow(() -> new AssertionError(input + " is not in " + figure.budget()));
    }

    /// A distance goes with the square of the entry speed: twice the relative error. 1 % of a wheel set from a size
    /// table, 0.2 % of a receiver.
    @ParameterizedTest
    @CsvSource({"WHEEL, 0.01", "RECEIVER, 0.002"})
    void anEntrySpeedThatNobodyCalibratedCountsTwice(Instrument.Kind kind, double scale) {
        var figure = figure(
                taped(kind.id() + "-1")
                        .uncalibrated(kind, OptionalDouble.empty())
                        .reduced(),
                "braking.stopping-distance method=tape " + VARIANT);

        assertThat(share(figure, "scale of the entry speed (not calibrated)")).isCloseTo(2 * 6.0 * scale, within(1e-9));
    }

    @Test
    void aWheelThatNobodyCalibratedIsWorthOnePerCentOfItsDistance() {
        var wheel =
                figure(traced(ofWheel(stops().speed(10, 0, 1)), "").reduced(), "braking.braking-distance " + VARIANT);
        var receiver = figure(traced(stops().speed(10, 0, 1), "").reduced(), "braking.braking-distance " + VARIANT);

        assertThat(share(wheel, "scale of the wheel speed (not calibrated)"))
                .isCloseTo(0.01 * wheel.value(), within(1e-9));
        assertThat(share(receiver, "scale of the receiver speed (not calibrated)"))
                .isCloseTo(0.002 * receiver.value(), within(1e-9));
    }

    /// 3 m/s of head wind shorten a stop by 2.4 %: 0.8 % for each metre a second.
    @ParameterizedTest
    @CsvSource({"'', wind (not written down), 0.012", "3.5 m/s, wind above the limit, 0.028"})
    void windThatNobodyWroteOrThatIsOverTheLimitWidensTheInterval(String wind, String input, double relative) {
        var day = taped("");
        var figure = figure(
                (wind.isEmpty() ? day : day.reading("", "wind-speed", wind)).reduced(),
                "braking.stopping-distance method=tape " + VARIANT);

        assertThat(share(figure, input)).isCloseTo(6.0 * relative, within(1e-9));
    }

    @Test
    void windAtTheLimitIsNotInTheBudget() {
        var figure = figure(
                taped("").reading("", "wind-speed", "3 m/s").reduced(),
                "braking.stopping-distance method=tape " + VARIANT);

        assertThat(figure.budget()).extracting(Contribution::input).noneMatch(input -> input.startsWith("wind"));
    }

    /// d·g·s/a, with s = 0.3 % for a road taken for level and 0.1 % for a slope that was read; a = v²/2d.
    @ParameterizedTest
    @CsvSource({"'', slope of the road (taken for level), 0.003", "0 %, slope of the road, 0.001"})
    void slopeCountsByGravityOverTheDeceleration(String slope, String input, double slopeSd) {
        var day = taped("");
        var figure = figure(
                (slope.isEmpty() ? day : day.reading("", "slope", slope)).reduced(),
                "braking.stopping-distance method=tape " + VARIANT);
        double deceleration = TWENTY_MPH * TWENTY_MPH / 2 / 6.0;

        assertThat(share(figure, input)).isCloseTo(6.0 * 9.80665 * slopeSd / deceleration, within(1e-4));
    }

    /// A stated delay is known within 0.02 s, alike in all runs: 8.94 m/s times that.
    @Test
    void aTakeUpIsAsUncertainAsTheOnsetAndTheReceiversStatedDelay() {
        var ride = stops();
        var outcome = traced(ride.speed(10, 0, 1), "receiver-1", ride.lever(0))
                .uncalibrated(Instrument.Kind.RECEIVER, OptionalDouble.of(SteppedRide.DELAY_S))
                .reduced();
        double common = Unit.MILE_PER_HOUR.toSi(20) * 0.02;

        assertThat(share(figure(outcome, "braking.stopping-distance method=trace " + VARIANT), "receiver's delay"))
                .isCloseTo(common, within(1e-9));
        for (var run : outcome.runs()) {
            var takeUp = value(run.values(), "take-up");
            var braking = value(run.values(), "braking.braking-distance");
            var stopping = value(run.values(), "trace-stopping-distance");
            // The lever is pulled 0.1 s before the brakes bite.
            assertThat(takeUp.value()).isCloseTo(0.1 * TWENTY_MPH, within(3 * takeUp.standardUncertainty()));
            assertThat(takeUp.standardUncertainty()).isGreaterThan(common).isLessThan(0.1 * TWENTY_MPH);
            assertThat(stopping.value()).isCloseTo(takeUp.value() + braking.value(), within(1e-9));
            assertThat(stopping.standardUncertainty())
                    .isCloseTo(Math.hypot(takeUp.standardUncertainty(), braking.standardUncertainty()), within(1e-9));
        }
    }

    private static RunValue value(Iterable<RunValue> values, String id) {
        for (var one : values) {
            if (one.name().equals(id)) {
                return one;
            }
        }
        throw new AssertionError(id + " is not among " + values);
    }
}
