package org.measuredmile.recording.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;

/// Whatever bytes stand in a folder, reading and editing it answer with findings and never fail.
class DayMutationPropertyTest {
    private static final String RUNS = """
            run,trial,variant,rider,start,course,direction,state,reason,note
            b-01,braking,method=tape,T1,10:27:41,promenade,out,confirmed,,"first, cold"
            b-02,braking,method=tape,T1,10:31,promenade,back,void,traffic,
            """;
    private static final String READINGS = "run,reading,value,unit\nb-01,entry-speed,20.3,mph\n,wind-speed,2 m/s,\n";
    private static final String BIKE = "id: ostrelle-lamplight\nprice: {amount: 1890, currency: USD}\nlevels: 5\n";
    private static final String LEDGER = "bike,figure,variant,value,unit\na,weighin.mass,battery=in,24.6,kg\n";
    private static final String[] PIECES = {
        "\"",
        ",",
        ";",
        "\n",
        "\r",
        ":",
        "- ",
        "{",
        "[",
        "]",
        "}",
        "&a ",
        "*a",
        "#",
        "\t",
        "'",
        "|",
        ">",
        "%",
        "!!int ",
        "<<: ",
        "? ",
        "\u0000",
        "\uFEFF",
        "ß",
        "𝓦",
        "999999999999999999999",
        "---\n",
        "...\n",
        "@",
        "`",
        "\\"
    };

    static LongStream seeds() {
        return LongStream.range(0, 400);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void nothingThatIsWrittenMakesAReaderFail(long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        var texts = new TreeMap<String, byte[]>();
        texts.put("day.yaml", mutated(FolderOf.DAY, random));
        texts.put("runs.csv", mutated(RUNS, random));
        texts.put("readings.csv", mutated(READINGS, random));
        texts.put("bike/bike.yaml", mutated(BIKE, random));
        var folder = new DayFolder("day-001", texts, new TreeMap<>());

        DayRead once = DayReader.read(folder);

        assertThat(DayReader.read(folder)).isEqualTo(once);
        if (once instanceof DayRead.Unusable unusable) {
            assertThat(unusable.findings()).anyMatch(one -> one.level() == Finding.Level.REFUSED);
        }
        DayFolder edited = DayEdit.withReadings(folder, List.of(reading()));
        edited = DayEdit.withRunState(edited, "b-01", Run.State.VOID, "other: rain");
        Optional<DayFolder> checked = DayEdit.withPreRideCheck(edited, new PreRideCheck("T1", "M1", "09:40"));
        DayReader.read(checked.orElse(edited));
        LedgerReader.read(
                "ledger.csv", mutated(LEDGER, random), _ -> Optional.of(org.measuredmile.quantity.QuantityKind.MASS));
    }

    private static Reading reading() {
        return new Reading("", "mass", "24.6 kg", "", "", Optional.empty(), "", "", Place.NOWHERE);
    }

    private static byte[] mutated(String text, RandomGenerator random) {
        List<Byte> bytes = new ArrayList<>();
        for (byte one : text.getBytes(StandardCharsets.UTF_8)) {
            bytes.add(one);
        }
        for (int i = random.nextInt(6); i > 0; i--) {
            int at = random.nextInt(bytes.size());
            switch (random.nextInt(4)) {
                case 0 -> bytes.remove(at);
                case 1 -> bytes.set(at, (byte) random.nextInt(256));
                case 2 ->
                    bytes.subList(at, Math.min(bytes.size(), at + 1 + random.nextInt(20)))
                            .clear();
                default -> {
                    for (byte one : PIECES[random.nextInt(PIECES.length)].getBytes(StandardCharsets.UTF_8)) {
                        bytes.add(at, one);
                    }
                }
            }
            if (bytes.isEmpty()) {
                break;
            }
        }
        byte[] all = new byte[bytes.size()];
        for (int i = 0; i < all.length; i++) {
            all[i] = bytes.get(i);
        }
        return all;
    }
}
