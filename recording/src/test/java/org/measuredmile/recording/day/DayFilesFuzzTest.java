package org.measuredmile.recording.day;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Spent;

/// Any bytes at all in one of the files that people write, in a folder whose other files are sound.
///
/// An ordinary test run replays the stored inputs, `./fuzz` searches for new ones.
class DayFilesFuzzTest {
    private static final String RUNS = """
            run,trial,variant,rider,start,course,direction,state,reason,note
            b-01,braking,method=tape,T1,10:27:41,promenade,out,confirmed,,
            b-02,braking,method=tape,T1,10:31,promenade,back,void,traffic,
            """;

    @FuzzTest
    void dayYamlAnswers(byte[] bytes) throws IOException {
        DayFolder folder = answers("day.yaml", bytes);
        DayEdit.withPreRideCheck(folder, new PreRideCheck("T1", "M1", "09:40")).ifPresent(DayReader::read);
    }

    @FuzzTest
    void runsAnswer(byte[] bytes) throws IOException {
        DayFolder folder = answers("runs.csv", bytes);
        DayReader.read(DayEdit.withRunState(folder, "b-01", Run.State.VOID, "other: rain"));
    }

    @FuzzTest
    void readingsAnswer(byte[] bytes) throws IOException {
        DayFolder folder = answers("readings.csv", bytes);
        var mass = new Reading("", "mass", "24.6 kg", "", "", Optional.empty(), "", "", Place.NOWHERE);
        DayFolder edited = DayEdit.withReadings(folder, List.of(mass));
        if (DayReader.read(edited) instanceof DayRead.Read(TestDay day, Bike bike, List<Finding> findings)
                && findings.stream().noneMatch(one -> one.place().source().equals("readings.csv"))) {
            assertThat(day.readings()).anyMatch(one -> one.name().equals("mass"));
        }
    }

    @FuzzTest
    void recordingsAnswer(byte[] bytes) throws IOException {
        answers("recordings.csv", bytes);
    }

    @FuzzTest
    void bikeYamlAnswers(byte[] bytes) throws IOException {
        answers("bike/bike.yaml", bytes);
    }

    @FuzzTest
    void specAnswers(byte[] bytes) throws IOException {
        answers("bike/spec.csv", bytes);
    }

    @FuzzTest
    void courseYamlAnswers(byte[] bytes) throws IOException {
        answers("courses/promenade.yaml", bytes);
    }

    @FuzzTest
    void ledgerAnswers(byte[] bytes) throws IOException {
        LedgerRead read = Spent.within(
                bytes.length, () -> LedgerReader.read("ledger.csv", bytes, _ -> Optional.of(QuantityKind.MASS)));
        sayWhere(read.findings());
        assertThat(read.results()).allMatch(result -> Double.isFinite(result.si()));
    }

    private static DayFolder answers(String file, byte[] bytes) throws IOException {
        var texts = new TreeMap<String, byte[]>();
        texts.put("day.yaml", FolderOf.DAY.getBytes(UTF_8));
        texts.put("runs.csv", RUNS.getBytes(UTF_8));
        texts.put(file, bytes);
        var recordings = new TreeMap<String, DayFolder.ByteSource>();
        recordings.put("ride.gpx", () -> new ByteArrayInputStream(new byte[0]));
        var folder = new DayFolder("day-001", texts, recordings);
        DayRead once = Spent.within(bytes.length, () -> DayReader.read(folder));
        assertThat(DayReader.read(folder)).isEqualTo(once);
        switch (once) {
            case DayRead.Read read -> {
                sayWhere(read.findings());
                assertThat(read.day().runs()).extracting(Run::id).doesNotHaveDuplicates();
            }
            case DayRead.Unusable unusable -> {
                sayWhere(unusable.findings());
                assertThat(unusable.findings()).anyMatch(one -> one.level() == Finding.Level.REFUSED);
            }
        }
        return folder;
    }

    private static void sayWhere(List<Finding> findings) {
        for (Finding finding : findings) {
            assertThat(finding.place().source()).as(finding.code()).isNotEmpty();
            assertThat(finding.message()).as(finding.code()).isNotBlank();
            if (finding.level() != Finding.Level.NOTE) {
                assertThat(finding.remedy()).as(finding.code()).isNotBlank();
            }
        }
    }
}
