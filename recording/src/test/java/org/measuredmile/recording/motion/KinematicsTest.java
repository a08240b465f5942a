package org.measuredmile.recording.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.Ascent;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Recording;

/// Way, ascent and grade of rides whose truth is known.
class KinematicsTest {
    /// Rides for 120 s at 6 m/s with a stand of two minutes in the middle.
    private static double alongM(double timeS) {
        return 6 * (Math.min(timeS, 60) + Math.max(0, timeS - 180));
    }

    private static Recording ride(double stepS, double sigmaM, double memoryS, boolean withSpeed, long seed) {
        var random = new Random(seed);
        var times = Simulated.times(0, 240, stepS);
        double kept = StrictMath.exp(-stepS / memoryS);
        var along = Arrays.stream(times).map(KinematicsTest::alongM).toArray();
        var channels = new ArrayList<Channel>(Simulated.positions(
                times,
                along,
                70,
                Simulated.wander(times.length, sigmaM, kept, random),
                Simulated.wander(times.length, sigmaM, kept, random)));
        if (withSpeed) {
            channels.add(Simulated.channel(ChannelKind.SPEED, times, t -> t > 60 && t < 180 ? 0.1 : 6));
        }
        return Simulated.recording(channels);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void standingAboutAddsNoWayWhetherSpeedTellsItOrOnlyFixes(long seed) {
        for (boolean withSpeed : new boolean[] {true, false}) {
            var way = TrackWay.of(ride(1, 2.5, 60, withSpeed, seed)).orElseThrow();
            // 720 m ridden; each end of the two legs is off by a position error of 2.5 m.
            assertThat(way.wayM()).isCloseTo(720, within(20.0));
            assertThat(way.standing().seconds()).isCloseTo(120, within(12.0));
            assertThat(way.standing().by()).contains(withSpeed ? "speed" : "fixes");
        }
    }

    @Test
    void noiseOfFastFixesDoesNotLengthenTheWayAsItDoesTheirSum() {
        var way = TrackWay.of(ride(0.1, 1, 3, true, 11)).orElseThrow();
        assertThat(way.unfilteredM()).isGreaterThan(850);
        assertThat(way.wayM()).isCloseTo(720, within(25.0));
    }

    @Test
    void aRecordingWithoutPositionsHasNoTrackWay() {
        var speed = Simulated.channel(ChannelKind.SPEED, Simulated.times(0, 10, 1), t -> 5);
        assertThat(TrackWay.of(Simulated.recording(speed))).isEmpty();
        assertThat(Standing.of(Simulated.recording(speed)).spans()).isEmpty();
    }

    private static Recording hills(boolean isBarometric) {
        var times = Simulated.times(0, 1000, 1);
        var channels = new ArrayList<Channel>();
        channels.add(Simulated.channel(
                ChannelKind.ALTITUDE, times, t -> 100 + 20 * (1 - StrictMath.cos(2 * Math.PI * t / 500))));
        if (isBarometric) {
            channels.add(Simulated.channel(ChannelKind.PRESSURE, times, t -> 100_000));
        }
        return Simulated.recording(channels);
    }

    /// ISO 2533:1975: the standard atmosphere has 288.15 K at sea level, and a layer's thickness goes with its
    /// absolute temperature: 273.15/288.15 = 0.9479, 308.15/288.15 = 1.0694.
    @ParameterizedTest(name = "{0} K")
    @CsvSource({"288.15, 1", "273.15, 0.94794", "308.15, 1.06941"})
    void ascentByPressureIsBroughtToTheAirTemperature(double airK, double factor) {
        var asWritten = Ascent.of(hills(true), OptionalDouble.empty()).orElseThrow();
        var corrected = Ascent.of(hills(true), OptionalDouble.of(airK)).orElseThrow();
        assertThat(corrected.ascentM() / asWritten.ascentM()).isCloseTo(factor, within(1e-5));
        assertThat(corrected.findings()).isEmpty();
        assertThat(corrected.relativeUncertainty()).isLessThan(0.01);
        assertThat(asWritten.relativeUncertainty()).isBetween(0.03, 0.06);
        assertThat(asWritten.findings())
                .singleElement()
                .satisfies(finding -> assertThat(finding.code()).isEqualTo("air-temperature-needed"));
    }

    @Test
    void theHysteresisIsThreeMetresByPressureAndTenBySatellite() {
        assertThat(Ascent.of(hills(true), OptionalDouble.empty()).orElseThrow().ascentM())
                .isCloseTo(80, within(3 * 2.0));
        var bySatellite = Ascent.of(hills(false), OptionalDouble.empty()).orElseThrow();
        assertThat(bySatellite.hysteresisM()).isEqualTo(10);
        assertThat(bySatellite.relativeUncertainty()).isZero();
        var ripple = Simulated.channel(ChannelKind.ALTITUDE, Simulated.times(0, 1000, 1), t -> 2.9 * StrictMath.sin(t));
        assertThat(Ascent.risesM(ripple, 10)).isZero();
    }

    /// 300 hills of 5 % over 400 m; the height's error as the grade assumes it.
    @Test
    void theGradesIntervalHoldsTheTruthAsOftenAsItSays() {
        int held = 0;
        double widest = 0;
        for (int seed = 0; seed < 300; seed++) {
            var random = new Random(seed);
            var distances = Simulated.times(0, 400, 5);
            var error = Simulated.wander(distances.length, 0.5, StrictMath.exp(-5.0 / 200), random);
            double[] heights = new double[distances.length];
            Arrays.setAll(heights, i -> 0.05 * distances[i] + error[i]);
            var grade =
                    Grade.of(distances, heights, Grade.HeightError.BAROMETRIC).orElseThrow();
            held += Math.abs(grade.value() - 0.05) <= 2 * grade.standardUncertainty() ? 1 : 0;
            widest = Math.max(widest, grade.standardUncertainty());
        }
        assertThat(held).isBetween(279, 297);
        assertThat(widest).isLessThan(0.003);
    }

    @Test
    void aStretchOfFewHeightsHasNoGrade() {
        assertThat(Grade.of(new double[] {0, 1, 2}, new double[] {0, 1, 2}, Grade.HeightError.SATELLITE))
                .isEmpty();
        assertThat(Grade.of(new double[20], new double[20], Grade.HeightError.SATELLITE))
                .isEmpty();
    }
}
