package org.measuredmile.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.recording.day.DayRead;
import org.measuredmile.recording.day.DayReader;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.recording.reader.Readers;

class DemoFleetTest {
    private static final List<DayFolder> DAYS = DemoFleet.days(DemoFleet.SEED);

    private static DayRead.Read read(DayFolder folder) {
        return (DayRead.Read) DayReader.read(folder);
    }

    private static DayRead.Read dayOf(String bike) {
        return DAYS.stream()
                .filter(folder -> folder.name().endsWith(bike))
                .map(DemoFleetTest::read)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void thereAreAtLeastTwentyFourBikesInFourCategories() {
        var bikes =
                DAYS.stream().map(DemoFleetTest::read).map(DayRead.Read::bike).toList();

        assertThat(bikes.stream().map(bike -> bike.id()).distinct()).hasSizeGreaterThanOrEqualTo(24);
        assertThat(bikes.stream().map(bike -> bike.category()).distinct())
                .containsExactlyInAnyOrder("cargo", "step-through", "folding", "commuter");
        assertThat(DAYS).hasSizeGreaterThan(24);
        assertThat(DAYS).extracting(DayFolder::name).isSorted().doesNotHaveDuplicates();
    }

    @Test
    void everyDayReadsWithoutFaultsButTheOneThatLostARecording() {
        for (DayFolder folder : DAYS) {
            var faults = read(folder).findings().stream()
                    .filter(one -> one.level() != Finding.Level.NOTE)
                    .map(Finding::code)
                    .toList();
            assertThat(faults)
                    .as(folder.name())
                    .isEqualTo(
                            folder.name().contains("haverdusk-shingle")
                                    ? List.of("recording-missing", "recording-missing")
                                    : List.of());
        }
    }

    @Test
    void everyRecordingIsOneThatTheReadersTake() throws IOException {
        for (DayFolder folder : DAYS) {
            for (var file : folder.recordings().entrySet()) {
                try (var bytes = file.getValue().open()) {
                    assertThat(Readers.decode(file.getKey(), bytes))
                            .as(folder.name() + " " + file.getKey())
                            .isInstanceOf(Decoding.Decoded.class);
                }
            }
        }
    }

    /// A bike's own test days, without the mornings on which the control bike was stopped.
    private static List<DayFolder> ownDays() {
        return DAYS.stream().filter(folder -> !isControlRide(folder)).toList();
    }

    private static boolean isControlRide(DayFolder folder) {
        return folder.name().endsWith(DemoFleet.CONTROL_BIKE)
                && read(folder).day().runs().stream()
                        .allMatch(run -> run.trial().equals("braking"));
    }

    @Test
    void theControlBikeIsStoppedOnTenMorningsAndMoreByEveryRider() {
        var mornings = DAYS.stream().filter(DemoFleetTest::isControlRide).toList();
        assertThat(mornings).hasSizeGreaterThanOrEqualTo(10);
        assertThat(mornings.stream()
                        .flatMap(folder -> read(folder).day().runs().stream())
                        .map(Run::rider)
                        .distinct())
                .containsExactlyInAnyOrder("T1", "T2", "R1");
        assertThat(ownDays()).anyMatch(folder -> folder.name().endsWith(DemoFleet.CONTROL_BIKE));
    }

    @Test
    void everyLevelIsRiddenOutAndBackWhereTheCausewayWasOpen() {
        for (DayFolder folder : ownDays()) {
            var read = read(folder);
            var levels = read.day().runs().stream()
                    .filter(run -> run.trial().equals("assistspeed"))
                    .toList();
            int ways = folder.name().endsWith("corrowan-ferrylight") ? 0 : 2;
            int drives = 1
                    + read.bike().levels().orElseThrow()
                    + (read.bike().drive().equals("pedal") ? 0 : 1);
            assertThat(levels).as(folder.name()).hasSize(ways * drives);
        }
    }

    @Test
    void everyBikeButTheFoldingOnesCoastsAsOftenBackAsOut() {
        for (DayFolder folder : ownDays()) {
            var read = read(folder);
            var coasts = read.day().runs().stream()
                    .filter(run -> run.trial().equals("coastdown"))
                    .toList();
            boolean isSaid =
                    read.day().notRidden().stream().anyMatch(one -> one.trial().equals("coastdown"));
            assertThat(coasts.isEmpty()).as(folder.name()).isEqualTo(isSaid);
            assertThat(coasts.stream().filter(run -> run.direction().equals("out")))
                    .as(folder.name())
                    .hasSize(coasts.size() / 2);
        }
    }

    @Test
    void everyDayAndEveryLoanSaysThatItIsInvented() {
        assertThat(DAYS).allSatisfy(folder -> {
            assertThat(read(folder).day().place()).contains("invented");
            assertThat(read(folder).bike().loan().disclosure()).contains("invented");
        });
    }

    @Test
    void whatGoesWrongInLifeGoesWrongHere() {
        assertThat(dayOf("zornby-drayman").day().recordings()).isEmpty();
        assertThat(dayOf("haverdusk-shingle").day().recording("stops.csv")).isPresent();
        assertThat(dayOf("quorvane-thimble").day().conditions().windSpeedMps()).isEmpty();
        assertThat(dayOf("ostrelle-candlewick").day().runs())
                .anySatisfy(run -> assertThat(run.reason()).isEqualTo("traffic"));
        assertThat(dayOf("pellowick-bramble").day().runs().stream()
                        .filter(run -> run.trial().equals("braking")))
                .isNotEmpty()
                .allSatisfy(run -> assertThat(run.state()).isEqualTo(Run.State.PROPOSED));
        assertThat(dayOf("corrowan-daybook").day().notRidden())
                .extracting(one -> one.trial() + ": " + one.reason())
                .containsExactlyInAnyOrder("standingstart: no throttle is fitted", "climb: no throttle is fitted");
        assertThat(dayOf("hobbarn-wainscot").day().runs())
                .noneMatch(run -> run.trial().equals("climb"));
        assertThat(dayOf("vessenby-farthing").bike().levels()).hasValue(1);
        assertThat(DAYS.stream()
                        .filter(folder -> folder.name().endsWith("ostrelle-lamplight"))
                        .map(DemoFleetTest::read)
                        .map(one -> one.day().configuration().firmware()))
                .containsExactly("1.4", "2.0");
    }

    @Test
    void theSameSeedGivesTheSameBytesAndAnotherSeedOthers() {
        assertThat(bytes(DemoFleet.days(DemoFleet.SEED))).isEqualTo(bytes(DAYS));
        assertThat(bytes(DemoFleet.days(1))).isNotEqualTo(bytes(DAYS));
    }

    private static Map<String, String> bytes(List<DayFolder> days) {
        Map<String, String> all = new TreeMap<>();
        for (DayFolder folder : days) {
            folder.texts().forEach((name, text) -> all.put(folder.name() + name, text(text)));
            folder.recordings().forEach((name, source) -> {
                try (var in = source.open()) {
                    all.put(folder.name() + name, text(in.readAllBytes()));
                } catch (IOException impossible) {
                    throw new java.io.UncheckedIOException(impossible);
                }
            });
        }
        return all;
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    @Test
    void theLedgerHoldsEightyResultsThreeSpellingsBlanksAndAnEqualPair() {
        List<String[]> lines = text(DemoFleet.ledger())
                .lines()
                .skip(2)
                .map(line -> line.split(",", -1))
                .toList();

        assertThat(lines).allSatisfy(cells -> assertThat(cells).hasSize(11));
        assertThat(lines.stream().filter(cells -> !cells[5].isEmpty())).hasSize(80);
        assertThat(lines.stream().filter(cells -> cells[5].isEmpty())).hasSize(4);
        var lengths = lines.stream()
                .filter(cells -> cells[3].equals("braking.stopping-distance"))
                .collect(Collectors.groupingBy(cells -> cells[6].equals("m")
                        ? "metres"
                        : cells[5].contains("ft") ? "feet and inches in words" : "feet and inches in signs"));
        assertThat(lengths).hasSize(3);
        assertThat(lines.stream().filter(cells -> cells[5].equals("26 ft 6 in")))
                .hasSizeGreaterThanOrEqualTo(2);
    }
}
