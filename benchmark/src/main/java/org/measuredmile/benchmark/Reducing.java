package org.measuredmile.benchmark;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.TreeMap;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.ScatterRecord;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/// A whole test day from its files to figures: hard stops and assist levels in one recording of delimited text.
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(java.util.concurrent.TimeUnit.MILLISECONDS)
public class Reducing {
    @Param({"1", "25"})
    public double rateHz = 1;

    @Param({"1", "3"})
    public double hours = 1;

    private DayFolder folder = new DayFolder("day", new TreeMap<>(), new TreeMap<>());

    @Setup
    public void write() {
        folder = day(hours, rateHz);
    }

    @Benchmark
    public int reduce(Cpu cpu) throws Exception {
        return cpu.of(() -> figures(folder));
    }

    static int figures(DayFolder folder) throws IOException {
        return switch (DayReduction.reduce(folder, ScatterRecord.DECLARED_PRIORS)) {
            case DayReduction.Result.Reduced reduced -> reduced.figures().size();
            case DayReduction.Result.Unusable unusable ->
                throw new IllegalStateException(unusable.findings().toString());
        };
    }

    static DayFolder day(double hours, double rateHz) {
        byte[] recording = Rides.log(hours, rateHz).delimited();
        var texts = new TreeMap<String, byte[]>();
        texts.put("day.yaml", """
                date: 2031-05-14
                timeZone: UTC
                place: Wendlesea promenade (invented)
                bike: invented
                riders: [{code: T1, massAsRidden: 82 kg}]
                checks: {preRide: {by: T1, secondPerson: M1, time: "08:40"}}
                instruments: [{id: receiver-1, kind: receiver}]
                conditions: {windSpeed: 1 m/s, surface: dry}
                """.getBytes(StandardCharsets.UTF_8));
        var runs = new StringBuilder("run,trial,variant,rider,start,state\n");
        var ids = new StringBuilder();
        for (double restS : Rides.restsS()) {
            String id = "b-" + ids.length();
            runs.append(id).append(",braking,method=trace surface=dry nominal=20-mph,T1,");
            // Whoever writes the start down looks at a watch some seconds before the stop.
            runs.append(Rides.START.plusMillis(Math.round((restS - 6) * 1000))).append(",confirmed\n");
            ids.append(id).append(' ');
        }
        texts.put("runs.csv", runs.toString().getBytes(StandardCharsets.UTF_8));
        texts.put(
                "recordings.csv",
                ("file,instrument,runs\nride.csv,receiver-1," + ids + "\n").getBytes(StandardCharsets.UTF_8));
        var recordings = new TreeMap<String, DayFolder.ByteSource>();
        recordings.put("ride.csv", () -> new ByteArrayInputStream(recording));
        return new DayFolder("day", texts, recordings);
    }
}
