package org.measuredmile.desk.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/// An invented test day as files: three stops by tape of a bike, and its folder beside it.
final class DayOnDisk {
    private static final String DAY = """
            # measured-mile day 1
            date: 2031-05-04
            timeZone: Europe/Berlin
            place: Ganderwick, the old airfield
            bike: ../bikes/%s
            configuration: {firmware: "2.1", battery: B1, tyres: 50-559}
            riders: [{code: R1, massAsRidden: 83.5 kg}]
            crew: [{code: R1, role: tester}, {code: M1, role: mechanic}]
            checks: {preRide: {by: R1, secondPerson: M1, time: "2031-05-04T09:10:00+02:00"}}
            conditions: {airTemperature: 18.5 °C, surface: dry, windSpeed: 1 m/s}
            instruments: [{id: tape-1, kind: tape, resolution: 1 cm}]
            """;

    private static final String RUNS = """
            run,trial,variant,rider,start,course,direction,state,reason,note
            b1,braking,,R1,,,out,confirmed,,
            b2,braking,,R1,,,back,confirmed,,
            b3,braking,,R1,,,out,confirmed,,
            """;

    private static final String READINGS = """
            run,reading,value,unit,instrument,time,by,note
            b1,entry-speed,%s,mph,,,R1,
            b1,stopping-distance,21.2,ft,tape-1,,R1,
            b2,entry-speed,19.8,mph,,,R1,
            b2,stopping-distance,20.7,ft,tape-1,,R1,
            b3,entry-speed,20.4,mph,,,R1,
            b3,stopping-distance,21.9,ft,tape-1,,R1,
            """;

    private static final String BIKE = """
            id: %s
            maker: Ostervald
            model: %s
            category: cargo
            drive: both
            """;

    private DayOnDisk() {}

    /// Writes `days/NAME` and `bikes/BIKE` under a folder; comes back with the day's folder.
    static Path write(Path folder, String name, String bike, String firstEntryMph) throws IOException {
        var day = Files.createDirectories(folder.resolve("days").resolve(name));
        Files.writeString(
                day.resolve("day.yaml"), DAY.replace("../bikes", "../../bikes").formatted(bike));
        Files.writeString(day.resolve("runs.csv"), RUNS);
        Files.writeString(day.resolve("readings.csv"), READINGS.formatted(firstEntryMph));
        var bikeFolder = Files.createDirectories(folder.resolve("bikes").resolve(bike));
        Files.writeString(bikeFolder.resolve("bike.yaml"), BIKE.formatted(bike, bike));
        return day;
    }

    static Path usual(Path folder) throws IOException {
        return write(folder, "day-1", "packhorse", "20.3");
    }
}
