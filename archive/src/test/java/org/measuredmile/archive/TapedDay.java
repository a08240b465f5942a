package org.measuredmile.archive;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.measuredmile.recording.day.DayFolder;

/// A small invented test day: three stops by tape, and a file in recordings/.
final class TapedDay {
    static final String RECORDING = "time_s,speed_kmh\n0.0,20.0\n0.1,20.0\n0.2,19.9\n";

    /// The id of the trial that is ridden.
    static final String TRIAL = "braking";

    private static final String DAY = """
            date: 2031-05-04
            timeZone: Europe/Berlin
            place: Ganderwick, the old airfield
            bike: %s
            configuration: {firmware: "2.1", battery: B1, tyres: 50-559}
            riders: [{code: R1, massAsRidden: 83.5 kg}]
            crew: [{code: R1, role: tester}, {code: M1, role: mechanic}]
            checks: {preRide: {by: R1, secondPerson: M1, time: "2031-05-04T09:10:00+02:00"}}
            conditions: {airTemperature: 18.5 °C, surface: dry, windSpeed: 1 m/s}
            instruments: [{id: tape-1, kind: tape, resolution: 1 cm}]
            """;

    private static final String RUNS = """
            run,trial,variant,rider,start,course,direction,state,reason,note
            b1,%1$s,,R1,,,out,confirmed,,
            b2,%1$s,,R1,,,back,confirmed,,
            b3,%1$s,,R1,,,out,confirmed,,
            """;

    private static final String READINGS = """
            run,reading,value,unit,instrument,time,by,note
            b1,entry-speed,20.3,mph,,,R1,
            b1,stopping-distance,%s,ft,tape-1,,R1,
            b2,entry-speed,19.8,mph,,,R1,
            b2,stopping-distance,20.7,ft,tape-1,,R1,
            b3,entry-speed,20.4,mph,,,R1,
            b3,stopping-distance,21.9,ft,tape-1,,R1,
            """;

    private static final String BIKE = """
            id: %s
            maker: Ostervald
            model: Packhorse
            category: cargo
            drive: both
            """;

    private TapedDay() {}

    static DayFolder of(String name, String bike, String firstDistanceFt) {
        var texts = new TreeMap<String, byte[]>();
        texts.put("day.yaml", bytes(DAY.formatted(bike)));
        texts.put("runs.csv", bytes(RUNS.formatted(TRIAL)));
        texts.put("readings.csv", bytes(READINGS.formatted(firstDistanceFt)));
        texts.put("bike/bike.yaml", bytes(BIKE.formatted(bike)));
        return new DayFolder(
                name, texts, new TreeMap<>(Map.of("log.csv", () -> new ByteArrayInputStream(bytes(RECORDING)))));
    }

    static DayFolder usual() {
        return of("day-1", "packhorse", "21.2");
    }

    /// A file of the usual day.
    static byte[] text(String path) {
        return Objects.requireNonNull(usual().texts().get(path), path);
    }

    /// The same day without a date: nothing to hang a figure on.
    static DayFolder withoutDate() {
        var day = usual();
        var texts = new TreeMap<>(day.texts());
        texts.put("day.yaml", bytes("place: Ganderwick\n"));
        return new DayFolder("no-date", texts, day.recordings());
    }

    static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
