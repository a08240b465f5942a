package org.measuredmile.desk.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/// An invented test day as files: a bike that weighs 68.3 lb with its battery and 61.2 lb without, and what its maker
/// says of it.
final class WeighedDay {
    private static final String DAY = """
            # measured-mile day 1
            date: 2031-05-04
            timeZone: Europe/Berlin
            place: Ganderwick, the workshop
            bike: ../bikes/lantern
            configuration: {firmware: "2.1", battery: B1, tyres: 50-559}
            riders: [{code: R1, massAsRidden: 83.5 kg}]
            crew: [{code: R1, role: tester}]
            conditions: {airTemperature: 18.5 °C}
            instruments:
              - id: scale-1
                kind: scale
                resolution: 0.1 lb
                calibration: {factor: 1.0, standardUncertainty: 0.0005, date: 2031-03-02}
            """;

    private static final String RUNS = """
            run,trial,variant,rider,start,course,direction,state,reason,note
            w1,weighin,battery=in,R1,,,,confirmed,,
            w2,weighin,battery=in,R1,,,,confirmed,,
            w3,weighin,battery=in,R1,,,,confirmed,,
            w4,weighin,battery=out,R1,,,,confirmed,,
            w5,weighin,battery=out,R1,,,,confirmed,,
            w6,weighin,battery=out,R1,,,,confirmed,,
            """;

    private static final String READINGS = """
            run,reading,value,unit,instrument,time,by,note
            w1,mass,68.3,lb,scale-1,,R1,
            w2,mass,68.3,lb,scale-1,,R1,
            w3,mass,68.3,lb,scale-1,,R1,
            w4,mass,61.2,lb,scale-1,,R1,
            w5,mass,61.2,lb,scale-1,,R1,
            w6,mass,61.2,lb,scale-1,,R1,
            """;

    private static final String BIKE = """
            id: lantern
            maker: Ostervald
            model: Lantern
            category: commuter
            drive: both
            """;

    private static final String SPEC = """
            item,claimed,unit,conditions,source,date,seen,photo,note
            mass,%s,lb,,the maker's page (invented),2031-01-15,,,
            range,up to 60,mi,level=lowest rider-mass=75 kg,the maker's page (invented),2031-01-15,,,
            brakes,"hydraulic discs, front and rear",,,the maker's page (invented),2031-01-15,,,
            """;

    private WeighedDay() {}

    /// Writes `days/day-1` and `bikes/lantern` under a folder; comes back with the day's folder.
    static Path write(Path folder, String claimedLb) throws IOException {
        var day = Files.createDirectories(folder.resolve("days").resolve("day-1"));
        Files.writeString(day.resolve("day.yaml"), DAY.replace("../bikes", "../../bikes"));
        Files.writeString(day.resolve("runs.csv"), RUNS);
        Files.writeString(day.resolve("readings.csv"), READINGS);
        var bike = Files.createDirectories(folder.resolve("bikes").resolve("lantern"));
        Files.writeString(bike.resolve("bike.yaml"), BIKE);
        Files.writeString(bike.resolve("spec.csv"), SPEC.formatted(claimedLb));
        return day;
    }
}
