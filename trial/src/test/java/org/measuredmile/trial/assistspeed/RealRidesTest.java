package org.measuredmile.trial.assistspeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.FoundRuns;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.ScatterRecord;

/// Real rides of an electric bike through a town, each at one known assist level (open data set of SFIEssential,
/// DualEMobilityData, MIT licence): through the whole of a day's reduction.
class RealRidesTest {
    private static final String DAY = """
            date: %s
            timeZone: Europe/Dublin
            place: a town
            bike: town-bike
            """;
    private static final String RUNS = """
            run,trial,variant,rider,start,course,direction,state,reason,note
            a1,assistspeed,level=%s,,,,,confirmed,,whole ride
            """;
    private static final String RECORDINGS = """
            file,instrument,runs,clock-offset-s,note
            %s,,a1,0,
            """;

    private static Optional<Path> folder() {
        for (Path at = Path.of("").toAbsolutePath(); at != null; at = at.getParent()) {
            var found = at.resolve("shared/recordings/csv-ebike");
            if (Files.isDirectory(found)) {
                return Optional.of(found);
            }
        }
        return Optional.empty();
    }

    private static DayReduction.Result.Reduced reduced(String file, String level) throws IOException {
        var folder = folder();
        assumeTrue(folder.isPresent(), "skipped: no folder shared/recordings above the working directory");
        var texts = new TreeMap<String, byte[]>();
        texts.put("day.yaml", DAY.formatted("2023-07-06").getBytes(StandardCharsets.UTF_8));
        texts.put("runs.csv", RUNS.formatted(level).getBytes(StandardCharsets.UTF_8));
        texts.put("recordings.csv", RECORDINGS.formatted(file).getBytes(StandardCharsets.UTF_8));
        var recordings = new TreeMap<String, DayFolder.ByteSource>();
        recordings.put(file, () -> Files.newInputStream(folder.get().resolve(file)));
        var result = DayReduction.reduce(new DayFolder("ride", texts, recordings), ScatterRecord.DECLARED_PRIORS);
        assertThat(result).isInstanceOf(DayReduction.Result.Reduced.class);
        return (DayReduction.Result.Reduced) result;
    }

    /// Bounds of the mean speed: below the largest speed of each file, above half of the riding mean that the data
    /// set's authors give (18.2, 15.5, 20.3, 18.8 and 15.2 km/h).
    @ParameterizedTest
    @CsvSource({
        "ebike_ride_a_assist5_4900m.csv, 5, 18.2, 25.232",
        "ebike_ride_b_assist4_9360m_48min.csv, 4, 15.5, 23.872",
        "ebike_ride_c_assist5_4430m.csv, 5, 20.3, 24.746",
        "ebike_ride_d_assist4_3530m.csv, 4, 18.8, 24.692",
        "ebike_ride_e_assist2_1760m_relative_time.csv, 2, 15.2, 20.25"
    })
    void eachRideGivesSteadyStretchesWithASpeedAndBothIntervals(
            String file, String level, double meanKmh, double largestKmh) throws IOException {
        var outcome = Objects.requireNonNull(reduced(file, level).outcomes().get("assistspeed"));
        var figure = outcome.figures().getFirst();
        assertThat(figure.key().variant().has("level", level)).isTrue();
        assertThat(figure.value() * 3.6).isBetween(meanKmh / 2, largestKmh);
        assertThat(figure.thisDay().interval95().halfWidth()).isBetween(0.05, 3.0);
        assertThat(figure.anyDay().interval95().halfWidth())
                .isGreaterThan(figure.thisDay().interval95().halfWidth());
        assertThat(stretches(outcome).filter(RunResult::counted).count()).isGreaterThanOrEqualTo(3);
        assertThat(stretches(outcome).filter(one -> !one.counted()))
                .allSatisfy(one -> assertThat(one.reason()).isNotBlank());
        assertThat(stretches(outcome).filter(RunResult::counted)).allSatisfy(one -> {
            assertThat(one.value("speed").orElseThrow().value()).isBetween(2.0, largestKmh / 3.6);
            assertThat(one.value("speed-any-day").orElseThrow().standardUncertainty())
                    .isGreaterThan(one.value("speed").orElseThrow().standardUncertainty());
        });
    }

    /// The data set's description names a fall from 5.05 m/s to nothing within a second, a sensor that timed out.
    @Test
    void aSensorThatTimedOutEntersNoStretch() throws IOException {
        var outcome = Objects.requireNonNull(
                reduced("ebike_ride_b_assist4_9360m_48min.csv", "4").outcomes().get("assistspeed"));
        assertThat(outcome.findings())
                .anyMatch(finding -> finding.code().equals("sensor-drop-out")
                        && finding.message().contains("5.05 m/s")
                        && finding.place().where().equals("140.0 s"));
        assertThat(stretches(outcome).filter(RunResult::counted)).noneMatch(one -> {
            var stretch = one.stretch().orElseThrow();
            return stretch.fromS() < 140 && stretch.toS() > 140;
        });
    }

    @Test
    void aRideOfWhichNobodySaidTheLevelIsProposedInStretches() throws IOException {
        var recording = ((Decoding.Decoded) Objects.requireNonNull(reduced("ebike_ride_d_assist4_3530m.csv", "4")
                        .recordings()
                        .get("ebike_ride_d_assist4_3530m.csv")))
                .recording();
        var found = FoundRuns.in(recording).stream()
                .filter(one -> one.trial().equals("assistspeed"))
                .map(FoundRuns.Found::run)
                .toList();
        assertThat(found).hasSizeGreaterThan(5).allSatisfy(run -> {
            assertThat(run.state()).isEqualTo(Run.State.PROPOSED);
            assertThat(run.variant().get("level")).isEmpty();
        });
        assertThat(found.stream().filter(RunResult::counted).count()).isGreaterThanOrEqualTo(3);
    }

    private static Stream<RunResult> stretches(Outcome outcome) {
        return outcome.runs().stream().filter(one -> one.run().startsWith("a1/"));
    }
}
