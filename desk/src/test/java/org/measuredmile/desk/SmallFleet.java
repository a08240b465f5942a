package org.measuredmile.desk;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.measuredmile.demo.DemoFleet;
import org.measuredmile.recording.day.DayFolder;

/// The invented fleet's days without their recordings, which take long to reduce.
public final class SmallFleet {
    private static final String WEIGHED = "w-";

    private SmallFleet() {}

    /// Every bike's weigh-in alone.
    public static List<DayFolder> weighIns() {
        return DemoFleet.days(DemoFleet.SEED).stream()
                .filter(day -> !isControlRide(day))
                .map(SmallFleet::weighIn)
                .toList();
    }

    /// The mornings on which the control bike was stopped by tape.
    public static List<DayFolder> controlRides() {
        return DemoFleet.days(DemoFleet.SEED).stream()
                .filter(SmallFleet::isControlRide)
                .toList();
    }

    private static boolean isControlRide(DayFolder day) {
        return day.name().endsWith(DemoFleet.CONTROL_BIKE) && day.recordings().isEmpty();
    }

    private static DayFolder weighIn(DayFolder day) {
        var texts = new TreeMap<>(day.texts());
        texts.remove("recordings.csv");
        for (String name : List.of("runs.csv", "readings.csv")) {
            byte[] text = texts.get(name);
            if (text != null) {
                texts.put(name, weighed(text));
            }
        }
        return new DayFolder(day.name(), texts, new TreeMap<>());
    }

    private static byte[] weighed(byte[] csv) {
        return new String(csv, StandardCharsets.UTF_8)
                .lines()
                .filter(line -> line.startsWith("#") || line.startsWith("run,") || line.startsWith(WEIGHED))
                .collect(Collectors.joining("\n", "", "\n"))
                .getBytes(StandardCharsets.UTF_8);
    }
}
