package org.measuredmile.trial.braking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.statistics.Sample;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.ScatterRecord;

/// Braking days as files, the way a crew hands them in.
class BrakingFilesTest {
    private static final String DAY = """
            date: 2031-05-14
            timeZone: Europe/London
            bike: ostrelle-lamplight
            checks:
              preRide: {by: M1, secondPerson: T1, time: "09:40"}
            conditions: {windSpeed: "3 mph", surface: dry}
            instruments:
              - {id: logger, kind: receiver}
              - {id: tape, kind: tape, resolution: "1 cm"}
            """;
    private static final String RUNS = """
            run,trial,variant,rider,start,course,direction,state,reason,note
            b-1,braking,method=tape,R1,,,,confirmed,,
            b-2,braking,method=tape,R1,,,,confirmed,,
            b-3,braking,method=tape,R1,,,,confirmed,,
            """;

    private static String readings(String third) {
        return """
                run,reading,value,unit,instrument,time,by,note
                b-1,entry-speed,20.3,mph,logger,,T1,
                b-1,stopping-distance,21.2,ft,tape,,T1,
                b-2,entry-speed,19.8,mph,logger,,T1,
                b-2,stopping-distance,20.7,ft,tape,,T1,
                b-3,entry-speed,%s,mph,logger,,T1,
                b-3,stopping-distance,21.9,ft,tape,,T1,
                """.replace("%s", third);
    }

    private static DayReduction.Result.Reduced reduced(String runs, String readings, String recording)
            throws IOException {
        var texts = new TreeMap<String, byte[]>();
        texts.put("day.yaml", DAY.getBytes(StandardCharsets.UTF_8));
        texts.put("runs.csv", runs.getBytes(StandardCharsets.UTF_8));
        texts.put("readings.csv", readings.getBytes(StandardCharsets.UTF_8));
        var recordings = new TreeMap<String, DayFolder.ByteSource>();
        if (!recording.isEmpty()) {
            byte[] bytes = recording.getBytes(StandardCharsets.UTF_8);
            recordings.put("stops.csv", () -> new ByteArrayInputStream(bytes));
        }
        var folder = new DayFolder("2031-05-14-lamplight", texts, recordings);
        return (DayReduction.Result.Reduced) DayReduction.reduce(folder, ScatterRecord.DECLARED_PRIORS);
    }

    private static Outcome braking(DayReduction.Result.Reduced reduced) {
        return Optional.ofNullable(reduced.outcomes().get("braking")).orElseThrow();
    }

    private static Figure stopping(DayReduction.Result.Reduced reduced) {
        return reduced.figures().stream()
                .filter(figure ->
                        figure.key().text().equals("braking.stopping-distance method=tape nominal=20-mph surface=dry"))
                .findFirst()
                .orElseThrow();
    }

    /// Rows T01 and T02 of the crew's table of check values: d · (20 / v)², by hand.
    @Test
    void threeTapedStopsFromFiles() throws IOException {
        var figure = stopping(reduced(RUNS, readings("20.4"), ""));
        var feet = Sample.of(figure.runs().stream()
                .mapToDouble(run -> Unit.FOOT.fromSi(run.value().orElseThrow()))
                .toArray());
        assertThat(Unit.FOOT.fromSi(figure.value())).isCloseTo(20.916, within(0.0005));
        assertThat(feet.standardDeviation()).isCloseTo(0.2948, within(0.00005));
        assertThat(figure.runs()).allMatch(FigureRun::counted);
    }

    @Test
    void aChangedEntrySpeedTakesTheRunOutAndWidensTheInterval() throws IOException {
        var three = stopping(reduced(RUNS, readings("20.4"), ""));
        var changed = reduced(RUNS, readings("21.2"), "");
        var two = stopping(changed);
        assertThat(two.counted()).isEqualTo(2);
        assertThat(two.runs()).hasSize(3);
        assertThat(two.runs().get(2).reason()).isEqualTo("entry speed 21.2 mph is outside 19.07 to 20.93 mph");
        assertThat(two.thisDay().interval95().halfWidth())
                .isGreaterThan(three.thisDay().interval95().halfWidth());
        assertThat(two.anyDay().interval95().halfWidth())
                .isGreaterThan(three.anyDay().interval95().halfWidth());
        assertThat(braking(changed).runs()).filteredOn(RunResult::counted).hasSize(2);
    }

    @Test
    void aRecordedDayGivesDistancesAndDecelerationsAndTheTraceOfEachRun() throws IOException {
        var ride = new SteppedRide().stop(8.94, 6).stop(8.94, 6);
        var samples = ride.speed(10, 0, 4);
        var text = new StringBuilder("time_s,speed_mps\n");
        for (int i = 0; i < samples.size(); i++) {
            text.append(String.format(Locale.ROOT, "%.2f,%.3f\n", samples.timeS(i), samples.value(i)));
        }
        var outcome = braking(
                reduced("run,trial,variant,rider,start,course,direction,state,reason,note\n", "", text.toString()));
        assertThat(outcome.runs()).hasSize(2).allSatisfy(run -> {
            assertThat(run.state()).isEqualTo(Run.State.PROPOSED);
            assertThat(run.counted()).isTrue();
            assertThat(run.trace()).isPresent();
        });
        assertThat(outcome.figures())
                .extracting(figure -> figure.key().figure())
                .containsExactly("braking.braking-distance", "braking.mean-deceleration", "braking.mfdd");
        assertThat(outcome.figures())
                .allSatisfy(figure ->
                        assertThat(figure.findings()).anyMatch(one -> one.code().equals("not-confirmed")));
    }
}
