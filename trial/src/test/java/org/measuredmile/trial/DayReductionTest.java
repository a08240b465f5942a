package org.measuredmile.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.recording.reader.Decoding;

/// A day from its files to its figures, with things wrong in it.
class DayReductionTest {
    private static final String DAY = """
            date: 2031-05-14
            timeZone: Europe/London
            place: Wendlesea, invented
            bike: ostrelle-lamplight
            checks:
              preRide: {by: M1, secondPerson: T1, time: "09:40"}
            """;
    private static final String RUNS = """
            run,trial,variant,rider,start,course,direction,state,reason,note
            w1,weighin,battery=in,,,,,confirmed,,
            w2,weighin,battery=in,,,,,confirmed,,
            w3,weighin,battery=in,,,,,void,touched,
            x1,flying,,,,,,confirmed,,
            """;
    private static final String READINGS = """
            run,reading,value,unit,instrument,time,by,note
            w1,mass,27.4,kg,,,T1,
            w2,mass,27.5,kg,,,T1,
            w3,mass,31,kg,,,T1,
            ,colour,blue,,,,T1,
            """;

    @Test
    void aDayIsReducedFromItsFilesAndEachFigureNamesThem() throws IOException {
        var reduced = reduced(folder(DAY, RUNS, READINGS));
        var mass = reduced.figures().stream()
                .filter(figure -> figure.key().text().equals("weighin.mass battery=in"))
                .findFirst()
                .orElseThrow();
        assertThat(mass.counted()).isEqualTo(2);
        assertThat(mass.runs()).hasSize(3);
        assertThat(mass.inputs())
                .anyMatch(input -> input.name().equals("readings.csv")
                        && input.sha256().equals(Sha256.of(READINGS.getBytes(StandardCharsets.UTF_8))));
        assertThat(mass.inputs()).noneMatch(input -> input.kind().equals("recording"));
    }

    @Test
    void whatNoTrialKnowsIsNamedAndNothingElseIsLost() throws IOException {
        var reduced = reduced(folder(DAY, RUNS, READINGS));
        assertThat(reduced.findings())
                .anyMatch(finding -> finding.code().equals("unknown-trial")
                        && finding.message().contains("flying")
                        && finding.place().text().equals("runs.csv: line 5"))
                .anyMatch(finding -> finding.code().equals("unused-reading")
                        && finding.message().contains("colour"));
        assertThat(reduced.figures()).isNotEmpty();
    }

    @Test
    void aBrokenRecordingLeavesTheRestOfTheDayReduced() throws IOException {
        var reduced = reduced(folder(DAY, RUNS, READINGS));
        assertThat(reduced.recordings().get("broken.gpx")).isInstanceOf(Decoding.Refused.class);
        assertThat(reduced.figures()).isNotEmpty();
        assertThat(reduced.inputs()).anyMatch(input -> input.name().equals("broken.gpx"));
    }

    @Test
    void aDayWithoutDateOrBikeIsRefusedWithEveryFaultAndItsRecordingsKept() throws IOException {
        var result = DayReduction.reduce(folder("place: Wendlesea\n", RUNS, READINGS), ScatterRecord.DECLARED_PRIORS);
        assertThat(result).isInstanceOfSatisfying(DayReduction.Result.Unusable.class, unusable -> {
            assertThat(unusable.findings())
                    .anyMatch(finding -> finding.message().contains("date"));
            assertThat(unusable.findings())
                    .anyMatch(finding -> finding.message().contains("bike"));
            assertThat(unusable.recordings()).containsKey("broken.gpx");
        });
    }

    @Test
    void localeAndTimeZoneChangeNothing() throws IOException {
        var locale = Locale.getDefault();
        var zone = TimeZone.getDefault();
        var here = reduced(folder(DAY, RUNS, READINGS)).figures();
        try {
            Locale.setDefault(Locale.GERMANY);
            TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Auckland"));
            assertThat(reduced(folder(DAY, RUNS, READINGS)).figures()).isEqualTo(here);
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }

    @Test
    void aScatterRecordIsAnInputThatIsNamed() throws IOException {
        var scatter = new TreeMap<String, Scatter>();
        scatter.put("weighin.mass", new Scatter(0.2, 30, 0.1, 30, false));
        var record = new ScatterRecord("spring", "2031-03-01", scatter);
        var figures =
                ((DayReduction.Result.Reduced) DayReduction.reduce(folder(DAY, RUNS, READINGS), record)).figures();
        assertThat(figures.getFirst().inputs())
                .anyMatch(
                        input -> input.kind().equals("scatter") && input.name().equals("spring"));
        assertThat(figures.getFirst().thisDay().standard())
                .isGreaterThan(reduced(folder(DAY, RUNS, READINGS))
                        .figures()
                        .getFirst()
                        .thisDay()
                        .standard());
    }

    @Test
    void recordingsInAPackedFileAreTheDaysAndItsOneLineSpeaksForThem() throws IOException {
        var packed = new ByteArrayOutputStream();
        try (var zip = new ZipOutputStream(packed)) {
            for (String name : List.of("a.csv", "b.csv")) {
                zip.putNextEntry(new ZipEntry(name));
                zip.write("time (s),speed (m/s)\n0,1\n1,2\n".getBytes(StandardCharsets.UTF_8));
            }
        }
        var plain = folder(DAY + "instruments: [{id: box, kind: receiver}]\n", RUNS, READINGS);
        var texts = new TreeMap<>(plain.texts());
        texts.put("recordings.csv", "file,instrument\ndrop.zip,box\n".getBytes(StandardCharsets.UTF_8));
        var recordings = new TreeMap<String, DayFolder.ByteSource>();
        recordings.put("drop.zip", () -> new ByteArrayInputStream(packed.toByteArray()));
        var reduced = reduced(new DayFolder("2031-05-14-lamplight", texts, recordings));
        assertThat(reduced.recordings()).containsOnlyKeys("drop.zip/a.csv", "drop.zip/b.csv");
        assertThat(reduced.day().recording("drop.zip/a.csv").orElseThrow().instrument())
                .isEqualTo("box");
        assertThat(reduced.inputs())
                .contains(new Figure.InputHash("recording", "drop.zip", Sha256.of(packed.toByteArray())));
    }

    @Test
    void whatWasSetForAnInstrumentReachesTheReaderOfItsFiles() throws IOException {
        String set =
                "instruments: [{id: box, kind: wheel, columns: [{name: spd, meaning: wheel-speed, unit: km/h}]}]\n";
        var plain = folder(DAY + set, RUNS, READINGS);
        var texts = new TreeMap<>(plain.texts());
        texts.put("recordings.csv", "file,instrument\nnamed.csv,box\n".getBytes(StandardCharsets.UTF_8));
        var recordings = new TreeMap<String, DayFolder.ByteSource>();
        for (String name : List.of("named.csv", "unnamed.csv")) {
            recordings.put(
                    name,
                    () -> new ByteArrayInputStream("time (s),spd\n0,36\n1,18\n".getBytes(StandardCharsets.UTF_8)));
        }
        var reduced = reduced(new DayFolder("2031-05-14-lamplight", texts, recordings));
        for (var decoding : reduced.recordings().values()) {
            assertThat(decoding)
                    .isInstanceOfSatisfying(
                            Decoding.Decoded.class,
                            read -> assertThat(read.recording()
                                            .channel(ChannelKind.WHEEL_SPEED)
                                            .orElseThrow()
                                            .values())
                                    .containsExactly(10, 5));
        }
    }

    private static DayReduction.Result.Reduced reduced(DayFolder folder) throws IOException {
        return (DayReduction.Result.Reduced) DayReduction.reduce(folder, ScatterRecord.DECLARED_PRIORS);
    }

    private static DayFolder folder(String day, String runs, String readings) {
        var texts = new TreeMap<String, byte[]>();
        texts.put("day.yaml", day.getBytes(StandardCharsets.UTF_8));
        texts.put("runs.csv", runs.getBytes(StandardCharsets.UTF_8));
        texts.put("readings.csv", readings.getBytes(StandardCharsets.UTF_8));
        var recordings = new TreeMap<String, DayFolder.ByteSource>();
        recordings.put("broken.gpx", () -> new ByteArrayInputStream("<gpx><trk>".getBytes(StandardCharsets.UTF_8)));
        return new DayFolder("2031-05-14-lamplight", texts, recordings);
    }
}
