package org.measuredmile.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/// One fault at a time is planted into a ride that has none; the fault is found and nothing else is.
class CrossChecksTest {
    private static final int SECONDS = 900;
    private static final double METRES_A_DEGREE = 111_195;

    /// A made ride at 1 Hz due north-east in a weave, 3 to 9 m/s, with a stop in its middle: plain arrays to spoil.
    private static final class Ride {
        private final Random noise;
        private final double[] timesS = new double[SECONDS];
        private final double[] speedMps = new double[SECONDS];
        private final double[] latitude = new double[SECONDS];
        private final double[] longitude = new double[SECONDS];
        private final double[] altitude = new double[SECONDS];
        private final double[] distanceM = new double[SECONDS];
        private final double[] powerW = new double[SECONDS];
        private Instant start = Instant.parse("2031-05-14T09:00:00Z");

        private Ride(long seed) {
            noise = new Random(seed);
            double wayM = 0;
            for (int i = 0; i < SECONDS; i++) {
                timesS[i] = i;
                boolean stands = i >= 400 && i < 430;
                double trueMps = stands ? 0 : 6 + 3 * Math.sin(i / 23.0);
                wayM += i == 0 ? 0 : trueMps;
                speedMps[i] = Math.max(0, trueMps + 0.05 * noise.nextGaussian());
                distanceM[i] = wayM;
                latitude[i] = 50 + (wayM * 0.8 + 0.2 * noise.nextGaussian()) / METRES_A_DEGREE;
                longitude[i] =
                        8 + (wayM * 0.6 + 0.2 * noise.nextGaussian()) / METRES_A_DEGREE / Math.cos(Math.toRadians(50));
                altitude[i] = 100 + 5 * Math.sin(i / 50.0);
                powerW[i] = Math.rint(150 + 30 * noise.nextGaussian());
            }
        }

        private Recording recording() {
            List<Channel> channels = new ArrayList<>(List.of(
                    channel(ChannelKind.LATITUDE, latitude),
                    channel(ChannelKind.LONGITUDE, longitude),
                    channel(ChannelKind.ALTITUDE, altitude),
                    channel(ChannelKind.SPEED, speedMps),
                    channel(ChannelKind.DISTANCE, distanceM),
                    channel(ChannelKind.POWER, powerW)));
            return of(channels);
        }

        private Recording of(List<Channel> channels) {
            return new Recording(
                    "ride",
                    Format.GPX,
                    "",
                    Optional.of(start),
                    true,
                    timesS.length,
                    timesS,
                    List.of(new Segment(timesS[0], timesS[timesS.length - 1])),
                    channels,
                    new TreeMap<>(),
                    List.of());
        }

        private Channel channel(ChannelKind kind, double[] values) {
            return new Channel(kind, kind.id(), "", new Channel.Series(timesS, values));
        }
    }

    private static Finding only(Recording recording, String code) {
        List<Finding> findings = CrossChecks.of(recording);
        assertThat(findings).extracting(Finding::code).containsExactly(code);
        return findings.getFirst();
    }

    static Stream<Long> seeds() {
        return Stream.iterate(1L, seed -> seed + 1).limit(20);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void anOrdinaryRideGivesNoFinding(long seed) {
        assertThat(CrossChecks.of(new Ride(seed).recording())).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void oneWildPositionIsOneJumpAtItsTime(long seed) {
        Ride ride = new Ride(seed);
        ride.latitude[200] += 300 / METRES_A_DEGREE;
        List<Finding> findings = CrossChecks.of(ride.recording());
        // The way out and back also makes the track 600 m too long.
        assertThat(findings).extracting(Finding::code).contains("position-jump");
        Finding jump = findings.stream()
                .filter(finding -> finding.code().equals("position-jump"))
                .findFirst()
                .orElseThrow();
        assertThat(jump.message()).startsWith("one position jumps");
        assertThat(jump.place().where()).isEqualTo("200.0 s");
    }

    @Test
    void aPositionThatStaysWhileTheSpeedGoesOnIsFrozen() {
        Ride ride = new Ride(1);
        for (int i = 600; i < 630; i++) {
            ride.latitude[i] = ride.latitude[600];
            ride.longitude[i] = ride.longitude[600];
        }
        assertThat(CrossChecks.of(ride.recording()))
                .anyMatch(finding -> finding.code().equals("frozen-position")
                        && finding.place().where().equals("600.0 s")
                        && finding.message().contains("29 s"));
    }

    @Test
    void aSpeedOfNothingWhileThePositionsTravelIsADeadSensor() {
        Ride ride = new Ride(2);
        Arrays.fill(ride.speedMps, 700, 715, 0);
        assertThat(CrossChecks.of(ride.recording()))
                .anyMatch(finding -> finding.code().equals("dead-speed")
                        && finding.place().where().equals("700.0 s"));
    }

    @Test
    void aPowerThatIsHeldWhileOthersMoveIsFrozen() {
        Ride ride = new Ride(3);
        Arrays.fill(ride.powerW, 100, 140, 163);
        Finding frozen = only(ride.recording(), "frozen-sensor");
        assertThat(frozen.place().where()).isEqualTo("100.0 s");
        assertThat(frozen.message()).contains("39 s");
    }

    @Test
    void aSpeedThatFallsFasterThanTyresGripIsNamed() {
        Ride ride = new Ride(4);
        ride.speedMps[250] = 25;
        Finding step = only(ride.recording(), "speed-step");
        assertThat(step.message()).contains("2 places");
    }

    @Test
    void missingHeightsAreCounted() {
        Ride ride = new Ride(5);
        Recording whole = ride.recording();
        List<Channel> none = whole.channels().stream()
                .filter(channel -> channel.kind() != ChannelKind.ALTITUDE)
                .toList();
        assertThat(only(ride.of(none), "missing-elevation").message()).startsWith("no position");
        List<Channel> some = whole.channels().stream()
                .map(channel -> channel.kind() == ChannelKind.ALTITUDE ? channel.between(0, 449) : channel)
                .toList();
        assertThat(only(ride.of(some), "missing-elevation").message()).startsWith("450 of 900");
    }

    @ParameterizedTest
    @ValueSource(doubles = {18, 15, 3600, 42})
    void aClockThatLeapsForwardInMidRideIsFoundAndKnownLeapsAreNamed(double byS) {
        Ride ride = new Ride(6);
        for (int i = 150; i < SECONDS; i++) {
            ride.timesS[i] += byS;
        }
        Finding step = CrossChecks.of(ride.recording()).stream()
                .filter(finding -> finding.code().equals("clock-step"))
                .findFirst()
                .orElseThrow();
        assertThat(step.place().where()).isEqualTo("149.0 s");
        assertThat(step.message())
                .contains(String.format(java.util.Locale.ROOT, "%.1f s", byS))
                .contains(byS == 3600 ? "whole hours" : byS == 42 ? "one step" : "leap seconds");
    }

    @Test
    void aPauseOfTheSameLengthIsNoClockStep() {
        Ride ride = new Ride(6);
        for (int i = 405; i < SECONDS; i++) {
            ride.timesS[i] += 3600;
        }
        assertThat(only(ride.recording(), "gaps").place().where()).isEqualTo("404.0 s");
    }

    @Test
    void aPauseThatTheInstrumentMarkedIsNoGap() {
        Ride ride = new Ride(6);
        for (int i = 405; i < SECONDS; i++) {
            ride.timesS[i] += 3600;
        }
        Recording marked = ride.recording().marking(List.of(new Mark(Mark.Kind.PAUSE, 404, 4005, "")));
        assertThat(CrossChecks.of(marked)).isEmpty();
    }

    @Test
    void aClockThatWasNeverSetIsNamed() {
        Ride ride = new Ride(7);
        ride.start = Instant.parse("1980-01-06T00:00:12Z");
        assertThat(only(ride.recording(), "clock-not-set").message()).contains("1980-01-06");
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.94384, 0.514444})
    void knotsTakenForMetresPerSecondAreNamed(double factor) {
        Ride ride = new Ride(8);
        for (int i = 0; i < SECONDS; i++) {
            ride.speedMps[i] *= factor;
        }
        // 1 kn = 1852 m / 3600 s (NIST SP 811, appendix B.8).
        assertThat(CrossChecks.of(ride.recording()))
                .filteredOn(finding -> finding.code().equals("distances-disagree"))
                .isNotEmpty()
                .allMatch(finding -> finding.message().contains("knots are taken for metres per second"));
    }

    @Test
    void aWheelSetTooSmallIsAskedFor() {
        Ride ride = new Ride(9);
        double[] wheel = new double[SECONDS];
        Arrays.setAll(wheel, i -> ride.speedMps[i] * 0.94);
        List<Channel> channels = new ArrayList<>(ride.recording().channels());
        channels.removeIf(channel -> channel.kind() == ChannelKind.DISTANCE);
        channels.add(ride.channel(ChannelKind.WHEEL_SPEED, wheel));
        assertThat(CrossChecks.of(ride.of(channels)))
                .filteredOn(finding -> finding.code().equals("distances-disagree"))
                .hasSize(2)
                .allMatch(finding -> finding.message().contains("is the wheel size set 6 % too small?"));
    }

    @Test
    void noDistanceComesOfStanding() {
        Ride ride = new Ride(10);
        Random noise = new Random(11);
        for (int i = 0; i < SECONDS; i++) {
            ride.latitude[i] = 50 + 0.7 * noise.nextGaussian() / METRES_A_DEGREE;
            ride.longitude[i] = 8 + 0.7 * noise.nextGaussian() / METRES_A_DEGREE;
        }
        Recording standing = ride.of(List.of(
                ride.channel(ChannelKind.LATITUDE, ride.latitude),
                ride.channel(ChannelKind.LONGITUDE, ride.longitude),
                ride.channel(ChannelKind.ALTITUDE, ride.altitude)));
        Inspection inspection = Inspection.of(standing, List.of());
        assertThat(inspection.trackDistanceMetres().orElseThrow()).isGreaterThan(500);
        assertThat(inspection.distanceMetres().orElseThrow()).isLessThan(20);
        assertThat(only(standing, "standing-jitter").message()).contains("wander");
    }

    @Test
    void ridingLosesNoDistanceToTheSearchForStanding() {
        Ride ride = new Ride(12);
        Recording moving = ride.of(List.of(
                ride.channel(ChannelKind.LATITUDE, ride.latitude),
                ride.channel(ChannelKind.LONGITUDE, ride.longitude),
                ride.channel(ChannelKind.ALTITUDE, ride.altitude)));
        double trueM = ride.distanceM[SECONDS - 1];
        assertThat(Inspection.of(moving, List.of()).distanceMetres().orElseThrow())
                .isCloseTo(trueM, within(0.005 * trueM));
    }
}
