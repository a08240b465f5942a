package org.measuredmile.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.benchmark.Rounds.Case;
import org.openjdk.jmh.runner.RunnerException;

/// Measures everything and writes the tables. usage: Table FOLDER ROUNDS [fits]
///
/// FOLDER holds `peer.py` and `peer_fits.py`, and takes `target/benchmarks.md`. With a third argument `fits` only what
/// is beside numpy and scipy.
final class Table {
    private static final List<String> XML = List.of("gpx", "tcx");
    private static final double AIM_OF_SCAN = 0.6;
    private static final double AIM_FIT_MB_S = 100;
    private static final double AIM_OF_PEER = 30;
    private static final double AIM_TWELVE_S = 5;
    /// What `./mile` starts short commands with.
    private static final List<String> LIKE_MILE = List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC");

    private final Path folder;
    private final Rounds rounds;
    private final int count;
    private final StringBuilder text = new StringBuilder();

    private Table(Path folder, int rounds) {
        this.folder = folder;
        this.rounds = new Rounds(rounds);
        this.count = rounds;
    }

    static void main(String[] arguments) throws IOException, InterruptedException, RunnerException {
        var table = new Table(Path.of(arguments[0]), Integer.parseInt(arguments[1]));
        if (arguments.length > 2) {
            System.out.println(Machine.facts() + " " + arguments[1] + " rounds.");
            new FitTable(table.folder, table.count).lines().forEach(System.out::println);
            return;
        }
        table.write();
    }

    private void write() throws IOException, InterruptedException, RunnerException {
        line(Machine.facts() + " " + count + " rounds.");
        decoding();
        peer();
        reducing();
        fits();
        ranking();
        heap();
        Path to = folder.resolve("target/benchmarks.md");
        Files.createDirectories(to.getParent());
        Files.writeString(to, text);
        System.out.print(text);
        System.err.println("written to " + to);
    }

    private void decoding() throws RunnerException {
        var cases = new ArrayList<Case>();
        for (String ending : RideFiles.ENDINGS) {
            Map<String, String> parameters = Map.of("ending", ending);
            cases.add(new Case("decode " + ending, Decoding.class.getName() + ".decode", parameters));
            if (isScanned(ending)) {
                cases.add(new Case("scan " + ending, Decoding.class.getName() + ".scan", parameters));
            }
        }
        rounds.measure(cases);
        line("");
        line("| format | MB | decode, ms | MB/s | bare scan, MB/s | decode of scan | aim | |");
        line("| --- | --- | --- | --- | --- | --- | --- | --- |");
        var epochs = Rides.epochs(Decoding.HOURS, 1);
        for (String ending : RideFiles.ENDINGS) {
            double mb = RideFiles.of(ending, epochs).length / 1e6;
            double ms = rounds.medianMs("decode " + ending);
            double speed = mb / ms * 1e3;
            if (isScanned(ending)) {
                double ratio = rounds.medianRatio("scan " + ending, "decode " + ending);
                row(
                        "| %s | %.2f | %.2f | %.0f | %.0f | %.2f | %.1f | %s |",
                        ending,
                        mb,
                        ms,
                        speed,
                        mb / rounds.medianMs("scan " + ending) * 1e3,
                        ratio,
                        AIM_OF_SCAN,
                        met(ratio >= AIM_OF_SCAN));
            } else {
                boolean fit = ending.equals("fit");
                row(
                        "| %s | %.2f | %.2f | %.0f | | | %s | %s |",
                        ending, mb, ms, speed, fit ? "100 MB/s" : "", fit ? met(speed >= AIM_FIT_MB_S) : "");
            }
        }
    }

    private static boolean isScanned(String ending) {
        return XML.contains(ending) || ending.equals("csv");
    }

    /// Beside the library in Python: warm, and as a whole process each.
    private void peer() throws IOException, InterruptedException {
        Path file = folder.resolve("target/ride.gpx");
        Files.createDirectories(file.getParent());
        Files.write(file, RideFiles.of("gpx", Rides.epochs(Decoding.HOURS, 1)));
        String script = folder.resolve("peer.py").toString();
        var theirs = new ArrayList<Double>();
        var ourWhole = new ArrayList<Double>();
        var theirWhole = new ArrayList<Double>();
        for (int round = 0; round < count; round++) {
            Optional<Processes.Ended> warm = Processes.python(script, file.toString());
            if (warm.isEmpty()) {
                line("");
                line("Beside Python: skipped, python3-gpxpy is not installed (Debian: apt-get install python3-gpxpy).");
                return;
            }
            theirs.add(Double.parseDouble(warm.get().output()));
            Processes.python(script, file.toString(), "once").ifPresent(ended -> theirWhole.add(ended.wallMs()));
            ourWhole.add(Processes.java(LIKE_MILE, Once.class, file.toString()).wallMs());
        }
        double ours = rounds.medianMs("decode gpx");
        double their = Rounds.median(theirs);
        line("");
        line("| the GPX file above | here, ms | python3-gpxpy, ms | times faster | aim | |");
        line("| --- | --- | --- | --- | --- | --- |");
        row(
                "| warm, computing time | %.1f | %.0f | %.1f | %.0f | %s |",
                ours, their, their / ours, AIM_OF_PEER, met(their / ours >= AIM_OF_PEER));
        double whole = Rounds.median(ourWhole);
        double theirOnce = Rounds.median(theirWhole);
        row("| a whole process, by the clock | %.0f | %.0f | %.1f | | |", whole, theirOnce, theirOnce / whole);
    }

    private void reducing() throws IOException, RunnerException {
        var cases = new ArrayList<Case>();
        String[][] days = {{"1", "1"}, {"1", "3"}, {"25", "1"}, {"25", "3"}};
        for (String[] day : days) {
            cases.add(new Case(
                    "reduce " + day[0] + " Hz " + day[1] + " h",
                    Reducing.class.getName() + ".reduce",
                    Map.of("rateHz", day[0], "hours", day[1])));
        }
        rounds.measure(cases);
        line("");
        line("| a day from files to figures | MB | figures | ms | ms an hour of recording |");
        line("| --- | --- | --- | --- | --- |");
        for (String[] day : days) {
            double hours = Double.parseDouble(day[1]);
            double rateHz = Double.parseDouble(day[0]);
            double ms = rounds.medianMs("reduce " + day[0] + " Hz " + day[1] + " h");
            row(
                    "| %s h at %s Hz | %.1f | %d | %.0f | %.0f |",
                    day[1],
                    day[0],
                    Rides.log(hours, rateHz).delimited().length / 1e6,
                    Reducing.figures(Reducing.day(hours, rateHz)),
                    ms,
                    ms / hours);
        }
    }

    private void fits() throws IOException, InterruptedException, RunnerException {
        line("");
        new FitTable(folder, count).lines().forEach(this::line);
    }

    private void ranking() throws IOException, InterruptedException, RunnerException {
        int[] draws = {5_000, 10_000, 20_000};
        var cases = new ArrayList<Case>();
        for (int each : draws) {
            cases.add(new Case(
                    "rank " + each, Ranking.class.getName() + ".rank", Map.of("draws", Integer.toString(each))));
        }
        rounds.measure(cases);
        line("");
        line("| ranks of 1,000 bikes in one figure | ms | µs a draw |");
        line("| --- | --- | --- |");
        for (int each : draws) {
            double ms = rounds.medianMs("rank " + each);
            row("| %d draws, computing time of one thread | %.0f | %.1f |", each, ms, ms / each * 1e3);
        }
        var wall = new ArrayList<Double>();
        var computed = new ArrayList<Double>();
        for (int round = 0; round < count; round++) {
            String[] said =
                    Processes.java(List.of(), Twelve.class).output().strip().split(" ", -1);
            wall.add(Double.parseDouble(said[0]));
            computed.add(Double.parseDouble(said[1]));
        }
        double half = Rounds.median(computed) / 2;
        line("");
        row(
                "1,000 bikes, 12 figures, 20,000 draws, a new process: %.1f s computed by each of two threads"
                        + " (aim %.0f:"
                        + " %s); by the clock %.1f s.",
                half, AIM_TWELVE_S, met(half <= AIM_TWELVE_S), Rounds.median(wall));
    }

    private void heap() throws IOException, InterruptedException {
        String[] said = Processes.java(List.of("-Xmx256m", "-XX:+UseSerialGC"), PeakHeap.class)
                .output()
                .strip()
                .split(" ", -1);
        line("");
        row(
                "A GPX file of %s MB (%s points) in a heap of 256 MB: at most %s MB in use, %s MB held afterwards.",
                said[2], said[3], said[0], said[1]);
    }

    private static String met(boolean met) {
        return met ? "met" : "missed";
    }

    private void row(String format, Object... values) {
        line(String.format(Locale.ROOT, format, values));
    }

    private void line(String line) {
        text.append(line).append('\n');
    }
}
