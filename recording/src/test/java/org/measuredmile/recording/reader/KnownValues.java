package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Inspection;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Track;
import org.measuredmile.recording.reader.SharedRecordings.Known;

/// Holds a recording to the values of the collection's EXPECTED.csv whose definition is ours too.
///
/// Error: lengths of ways and distances 0.5 %, spans of time 0.01 %, largest speeds 0.05 %, or half the last digit as
/// written where that is more; counts exactly. Each is told in docs/formats/known-values.md.
final class KnownValues {
    private KnownValues() {}

    /// Compares one row; false for one that no definition covers.
    static boolean check(Known known) {
        if (known.file().startsWith("fit/")) {
            return FitKnown.check(known, SharedRecordings.recording(known.file()));
        }
        // One file of two rides, each known by its date.
        boolean dated = known.item().matches("^2020-\\d\\d-\\d\\d .*");
        Recording recording = dated
                ? SharedRecordings.recording(
                        known.file(),
                        SharedRecordings.linesWith(known.file(), known.item().substring(0, 10), true))
                : SharedRecordings.recording(known.file());
        return check(dated ? known.item().substring(11) : known.item(), known, recording);
    }

    /// Compares one value; false for an item that nobody has decided about.
    private static boolean check(String item, Known known, Recording recording) {
        switch (item) {
            case "tracks / segments / points / waypoints / routes" -> counts(known, recording);
            case "path length", "path length, GGA", "apparent path" ->
                near(recording.track().lengthM().orElse(0), known, 0.005);
            case "path length, RMC" -> {
                byte[] rmc = SharedRecordings.linesWith(known.file(), "RMC", false);
                near(
                        SharedRecordings.recording(known.file(), rmc)
                                .track()
                                .lengthM()
                                .orElse(0),
                        known,
                        0.005);
            }
            case "span of times", "elapsed time" -> near(recording.spanS(), known, 0.0001);
            case "duration" ->
                near(known.by().startsWith("gpxpy") ? segmentsS(recording) : recording.spanS(), known, 0.0001);
            case "rows", "Fix lines" -> assertThat(recording.samples()).isEqualTo(Long.parseLong(known.value()));
            case "Raw lines" ->
                assertThat(recording.counts()).containsEntry("lines-raw", Long.parseLong(known.value()));
            case "sentences" -> sentences(known, recording);
            case "wrong checksum / no checksum / unreadable lines" -> checksums(known, recording);
            case "sentences with a wrong checksum" ->
                assertThat(recording.counts()).containsEntry("wrong-checksum", Long.parseLong(known.value()));
            case "repeated times" -> noticed("repeated-time", known, recording);
            case "points without time" -> noticed("no-time", known, recording);
            case "points at 0/0" -> noticed("zero-coordinates", known, recording);
            case "empty segments" -> noticed("empty-segment", known, recording);
            case "time steps back" ->
                assertThat(recording.findings()).anyMatch(each -> each.code().equals("blocks-reordered"));
            case "steps not positive" ->
                assertThat(recording.samples() - recording.timesS().length).isEqualTo(Long.parseLong(known.value()));
            case "gaps over 1 s" ->
                assertThat(Inspection.of(recording, List.of()).gaps()).hasSize(Integer.parseInt(known.value()));
            default -> {
                return channels(item, known, recording);
            }
        }
        return true;
    }

    private static boolean channels(String item, Known known, Recording recording) {
        if (known.file().startsWith("tcx/")) {
            return TcxKnown.check(item, known, recording);
        }
        switch (item) {
            case "largest speed", "largest speed, RMC", "largest surface speed", "largest reported speed" ->
                near(largest(channel(recording, ChannelKind.SPEED)) * perMps(known), known, 0.0005);
            case "largest bus speed" -> near(largest(speedNamed(recording, "Speed")) * perMps(known), known, 0.0005);
            case "largest GNSS speed" ->
                near(largest(speedNamed(recording, "GpsSpeed")) * perMps(known), known, 0.0005);
            case "distance, vehicle bus" -> near(sumOverSeconds(speedNamed(recording, "Speed")), known, 0.005);
            case "distance, GNSS speed" -> near(sumOverSeconds(speedNamed(recording, "GpsSpeed")), known, 0.005);
            case "well-formed XML" ->
                assertThat(recording.findings()).anyMatch(each -> each.code().equals("ill-formed"));
            case "distance" -> {
                if (known.by().equals("authors of the data set")) {
                    // The wheel's last distance in kilometres, rounded to the hundredth.
                    Channel distance = channel(recording, ChannelKind.DISTANCE);
                    assertThat(distance.value(distance.size() - 1) / 1000).isCloseTo(known.number(), within(0.00501));
                } else if (known.by().equals("pandas sum")) {
                    near(sumOverSeconds(channel(recording, ChannelKind.SPEED)), known, 1e-6);
                } else {
                    near(trapezoid(channel(recording, ChannelKind.SPEED)), known, 0.005);
                }
            }
            case "roller distance", "distance from RMC speed" -> {
                // The one with late sentences is a trapezoid in file order there, in order of time
                // here: at rest, so that 0.2 m is all there is between them.
                double slack = known.file().contains("subsecond") ? 0.25 : 0.005;
                near(trapezoid(channel(recording, ChannelKind.SPEED)), known, slack);
            }
            case "last distance" ->
                near(
                        channel(recording, ChannelKind.DISTANCE)
                                .values()[
                                channel(recording, ChannelKind.DISTANCE).size() - 1],
                        known,
                        1e-6);
            case "largest power" -> near(largest(channel(recording, ChannelKind.POWER)), known, 1e-6);
            case "GNSS epochs" ->
                assertThat(channel(recording, ChannelKind.SPEED).size()).isEqualTo(Integer.parseInt(known.value()));
            case "GNSS rows" ->
                assertThat(channel(recording, ChannelKind.LATITUDE).size()).isEqualTo(Integer.parseInt(known.value()));
            case "largest rate" ->
                near(Math.toDegrees(largest(channel(recording, ChannelKind.TURN_RATE_Y))), known, 0.0005);
            case "median step" ->
                assertThat(channel(recording, ChannelKind.TURN_RATE_X).medianStepS())
                        .isCloseTo(known.number(), within(2e-6));
            case "state of charge at start" ->
                near(channel(recording, ChannelKind.STATE_OF_CHARGE).value(0) * 100, known, 1e-6);
            case "state of charge at end" -> {
                Channel charge = channel(recording, ChannelKind.STATE_OF_CHARGE);
                near(charge.value(charge.size() - 1) * 100, known, 1e-6);
            }
            default -> {
                return counted(item, known, recording);
            }
        }
        return true;
    }

    /// What is counted, summed or searched over all rows.
    private static boolean counted(String item, Known known, Recording recording) {
        switch (item) {
            case "first / last time, GGA" -> timesOfDay("GGA", known);
            case "first / last time, RMC" -> timesOfDay("RMC", known);
            case "repeated positions" ->
                assertThat(repeated(recording.track())).as(known.toString()).isEqualTo(Integer.parseInt(known.value()));
            case "points without elevation" -> {
                // In these files no point has one.
                assertThat(recording.channel(ChannelKind.ALTITUDE)).isEmpty();
                assertThat(recording.samples()).isEqualTo(Long.parseLong(known.value()));
            }
            case "work" -> near(sumOverSeconds(channel(recording, ChannelKind.POWER)), known, 1e-6);
            case "mean speed" -> near(mean(channel(recording, ChannelKind.SPEED)), known, 0.0001, 0.00005);
            case "mean power" -> near(mean(channel(recording, ChannelKind.POWER)), known, 0.0001, 0.0005);
            case "largest deceleration" ->
                near(-steepest(channel(recording, ChannelKind.SPEED), -1), known, 0.005, 0.005);
            case "largest acceleration" ->
                near(steepest(channel(recording, ChannelKind.SPEED), 1), known, 0.005, 0.005);
            case "hardest stop" -> near(hardestStop(channel(recording, ChannelKind.SPEED)), known, 0.002, 0.005);
            case "longest coasting run" ->
                assertThat(longestCoasting(recording)).isEqualTo(Integer.parseInt(known.value()));
            default -> {
                return false;
            }
        }
        return true;
    }

    private static double segmentsS(Recording recording) {
        return recording.segments().stream()
                .mapToDouble(segment -> segment.toS() - segment.fromS())
                .sum();
    }

    /// The sentences of one kind alone, so that those of another do not count as the first or the last.
    private static void timesOfDay(String sentence, Known known) {
        Recording alone =
                SharedRecordings.recording(known.file(), SharedRecordings.linesWith(known.file(), sentence, false));
        String[] parts = known.value().split(" / ");
        double passedS = secondOfDay(parts[1]) - secondOfDay(parts[0]);
        double overMidnightS = passedS < 0 ? passedS + 86_400 : passedS;
        assertThat(alone.spanS()).as(known.toString()).isCloseTo(overMidnightS, within(0.0011));
        alone.start()
                .ifPresent(start -> assertThat((start.toEpochMilli() % 86_400_000L) / 1000.0)
                        .as(known.toString())
                        .isCloseTo(secondOfDay(parts[0]), within(0.0011)));
    }

    private static double secondOfDay(String written) {
        return Integer.parseInt(written.substring(0, 2)) * 3600.0
                + Integer.parseInt(written.substring(2, 4)) * 60.0
                + Double.parseDouble(written.substring(4));
    }

    private static int repeated(Track track) {
        int repeated = 0;
        for (int i = 1; i < track.size(); i++) {
            boolean begins = Arrays.binarySearch(track.segmentStarts(), i) >= 0;
            boolean same = track.latitudes()[i] == track.latitudes()[i - 1]
                    && track.longitudes()[i] == track.longitudes()[i - 1];
            repeated += same && !begins ? 1 : 0;
        }
        return repeated;
    }

    private static double mean(Channel channel) {
        return Arrays.stream(channel.values()).average().orElseThrow();
    }

    /// The largest change of speed over ten epochs, which are about a second, up or down.
    private static double steepest(Channel speed, int sign) {
        double steepest = 0;
        for (int i = 10; i < speed.size(); i++) {
            double mps2 = (speed.value(i) - speed.value(i - 10)) / (speed.timeS(i) - speed.timeS(i - 10));
            steepest = sign * mps2 > sign * steepest ? mps2 : steepest;
        }
        return steepest;
    }

    /// From the last row at 5 m/s or more to the first at 0.5 m/s or less.
    private static double hardestStop(Channel speed) {
        double hardest = 0;
        int fast = -1;
        for (int i = 0; i < speed.size(); i++) {
            if (speed.value(i) >= 5) {
                fast = i;
            } else if (speed.value(i) <= 0.5 && fast >= 0) {
                double mps2 = (speed.value(fast) - speed.value(i)) / (speed.timeS(i) - speed.timeS(fast));
                hardest = Math.max(hardest, mps2);
                fast = -1;
            }
        }
        return hardest;
    }

    /// Rows in a row, a second apart, without power and cadence at more than 1.5 m/s.
    private static int longestCoasting(Recording recording) {
        Channel speed = channel(recording, ChannelKind.SPEED);
        int longest = 0;
        int rows = 0;
        for (int i = 0; i < speed.size(); i++) {
            boolean coasts = speed.value(i) > 1.5
                    && at(channel(recording, ChannelKind.POWER), speed.timeS(i)) == 0
                    && at(channel(recording, ChannelKind.CADENCE), speed.timeS(i)) == 0;
            boolean goesOn = i > 0 && speed.timeS(i) - speed.timeS(i - 1) == 1;
            rows = coasts ? (goesOn ? rows + 1 : 1) : 0;
            longest = Math.max(longest, rows);
        }
        return longest;
    }

    private static double at(Channel channel, double timeS) {
        int at = channel.indexAtOrAfter(timeS);
        return at < channel.size() && channel.timeS(at) == timeS ? channel.value(at) : Double.NaN;
    }

    private static void near(double value, Known known, double share, double rounding) {
        assertThat(value)
                .as(known.toString())
                .isCloseTo(known.number(), within(Math.max(Math.abs(known.number()) * share, rounding)));
    }

    private static void near(double value, Known known, double share) {
        assertThat(value).as(known.toString()).isCloseTo(known.number(), within(known.tolerance(share)));
    }

    private static void counts(Known known, Recording recording) {
        String[] parts = known.value().split(" / ");
        String[] names = {"tracks", "segments", "points", "waypoints", "routes"};
        for (int i = 0; i < names.length; i++) {
            assertThat(recording.counts()).as(known.file()).containsEntry(names[i], Long.parseLong(parts[i]));
        }
        assertThat(recording.samples()).isEqualTo(Long.parseLong(parts[2]));
    }

    private static void sentences(Known known, Recording recording) {
        String[] parts = known.value().split(" ");
        long wrong = recording.counts().getOrDefault("wrong-checksum", 0L);
        for (int i = 0; i < parts.length; i += 2) {
            long dropped = parts[i].equals("RMC") ? wrong : 0;
            assertThat(recording.counts()).containsEntry(parts[i], Long.parseLong(parts[i + 1]) - dropped);
        }
    }

    private static void checksums(Known known, Recording recording) {
        String[] parts = known.value().split(" / ");
        assertThat(recording.counts())
                .containsEntry("wrong-checksum", Long.parseLong(parts[0]))
                .containsEntry("no-checksum", Long.parseLong(parts[1]))
                .containsEntry("unreadable", Long.parseLong(parts[2]));
    }

    private static void noticed(String code, Known known, Recording recording) {
        assertThat(recording.findings())
                .as(known.toString())
                .anyMatch(finding ->
                        finding.code().equals(code) && finding.message().startsWith(known.value() + " "));
    }

    private static Channel channel(Recording recording, ChannelKind kind) {
        return recording.channel(kind).orElseThrow(() -> new AssertionError(recording.name() + " has no " + kind));
    }

    private static Channel speedNamed(Recording recording, String name) {
        return recording.channels().stream()
                .filter(channel ->
                        channel.kind() == ChannelKind.SPEED && channel.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static double largest(Channel channel) {
        return Arrays.stream(channel.values()).map(Math::abs).max().orElseThrow();
    }

    private static double sumOverSeconds(Channel speed) {
        return Arrays.stream(speed.values()).sum();
    }

    private static double trapezoid(Channel speed) {
        double sumM = 0;
        for (int i = 1; i < speed.size(); i++) {
            sumM += (speed.value(i) + speed.value(i - 1)) / 2 * (speed.timeS(i) - speed.timeS(i - 1));
        }
        return sumM;
    }

    private static double perMps(Known known) {
        return known.unit().equals("km/h") ? 3.6 : 1;
    }
}
