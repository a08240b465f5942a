package org.measuredmile.benchmark;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.measuredmile.benchmark.Rounds.Case;
import org.measuredmile.recording.motion.Smoother;
import org.measuredmile.trial.braking.BrakedStop;
import org.openjdk.jmh.runner.RunnerException;

/// Smoothing, fits and division beside numpy and scipy: each round ours, then theirs, and whether both found the same.
///
/// Error: IllegalStateException where the two differ by more than [#MOST_OF_U] of a standard uncertainty: then one of
/// them did other work, and the times say nothing.
final class FitTable {
    private static final double AIM = 10;
    /// What a stopping rule may leave between two optimisers, as part of a parameter's standard uncertainty.
    private static final double MOST_OF_U = 0.01;

    private static final List<Beside> COMPARED = List.of(
            new Beside("smooth", "smooth", "270,000 samples smoothed", "a loop over numpy's 3 × 3 matrices"),
            new Beside("smooth", "smooth-banded", "", "scipy's `solveh_banded`: no way, no uncertainties"),
            new Beside("stop", "stop", "one stop", "scipy's `least_squares`, bounds (trf)"),
            new Beside("stop", "stop-lm", "", "the same without bounds (MINPACK)"),
            new Beside("coast", "coast", "one pair of coasts", "`least_squares` on `solve_ivp`"),
            new Beside("coast", "coast-closed", "", "MINPACK on the closed form, no integration"),
            new Beside("pieces", "pieces", "three hours in pieces", "the same pruning, vectors of numpy"));

    private final Path folder;
    private final int count;
    private final List<Map<String, Double>> ours = new ArrayList<>();
    private final List<Map<String, Double>> theirs = new ArrayList<>();
    private final Map<String, double[]> found = new TreeMap<>();
    private String versions = "";

    FitTable(Path folder, int count) {
        this.folder = folder;
        this.count = count;
    }

    /// One work here, and one way to do it there.
    private record Beside(String ours, String theirs, String work, String way) {}

    /// The table's lines; one that says what to install where the libraries are not there.
    List<String> lines() throws IOException, InterruptedException, RunnerException {
        Path inputs = folder.resolve("target/fits");
        FitInputs.write(inputs);
        String script = folder.resolve("peer_fits.py").toString();
        for (int round = 0; round < count; round++) {
            ours.add(measured());
            var ended = Processes.python(script, inputs.toString());
            if (ended.isEmpty()) {
                return List.of(
                        "Beside numpy and scipy: skipped, not installed (Debian: apt-get install python3-scipy).");
            }
            theirs.add(read(ended.get().output()));
        }
        var lines = new ArrayList<String>();
        lines.add("| work | here, ms | there, ms | there by | times faster | aim | | differ by |");
        lines.add("| --- | --- | --- | --- | --- | --- | --- | --- |");
        for (var each : COMPARED) {
            double ratio = median(each, true);
            lines.add(String.format(
                    Locale.ROOT,
                    "| %s | %.3g | %.3g | %s | %.1f | %.0f | %s | %s |",
                    each.work(),
                    Rounds.median(ours.stream().map(one -> of(one, each.ours())).toList()),
                    median(each, false),
                    each.way(),
                    ratio,
                    AIM,
                    ratio >= AIM ? "met" : "missed",
                    difference(each.theirs(), inputs)));
        }
        lines.add("");
        lines.add("There: " + versions + ".");
        return lines;
    }

    private static Map<String, Double> measured() throws RunnerException {
        var one = new Rounds(1);
        var names = List.of("smooth", "stop", "coast", "pieces");
        one.measure(names.stream()
                .map(name -> new Case(name, Fitting.class.getName() + "." + name, Map.of()))
                .toList());
        var ms = new TreeMap<String, Double>();
        names.forEach(name -> ms.put(name, one.medianMs(name)));
        return ms;
    }

    private Map<String, Double> read(String output) {
        var ms = new TreeMap<String, Double>();
        for (String line : output.lines().toList()) {
            String[] words = line.split(" ", -1);
            if (words[0].equals("versions")) {
                versions = "numpy " + words[1] + ", scipy " + words[2] + ", Python " + words[3];
                continue;
            }
            ms.put(words[0], Double.parseDouble(words[1]));
            found.put(
                    words[0],
                    Arrays.stream(words)
                            .skip(2)
                            .mapToDouble(Double::parseDouble)
                            .toArray());
            System.err.printf("  there    %-16s %8.2f ms%n", words[0], ms.get(words[0]));
        }
        return ms;
    }

    /// Over the rounds: of the times there, or of their ratios to those here.
    private double median(Beside each, boolean ratio) {
        var values = new ArrayList<Double>();
        for (int round = 0; round < count; round++) {
            double there = of(theirs.get(round), each.theirs());
            values.add(ratio ? there / of(ours.get(round), each.ours()) : there);
        }
        return Rounds.median(values);
    }

    private static double of(Map<String, Double> ms, String name) {
        return Objects.requireNonNull(ms.get(name), name);
    }

    private String difference(String name, Path inputs) throws IOException {
        double[] there = Objects.requireNonNull(found.get(name), name);
        return switch (name) {
            case "smooth" -> ofSpeeds(read(inputs.resolve("smooth.theirs")), 2);
            case "smooth-banded" -> ofSpeeds(read(inputs.resolve("banded.theirs")), 1);
            case "stop", "stop-lm" -> {
                double[] here = BrakedStop.firstOf(FitInputs.ride()).fitted();
                yield ofFit(Arrays.copyOfRange(here, 1, 8), Arrays.copyOfRange(here, 8, 15), there, 7);
            }
            case "coast", "coast-closed" -> {
                double[] here = Fitting.coasted(FitInputs.coasts());
                yield ofFit(Arrays.copyOf(here, 4), Arrays.copyOfRange(here, 4, 8), there, 6);
            }
            default -> {
                double[] means = FitInputs.means();
                double[] here = Fitting.ends(means, FitInputs.penalty(means));
                requireAlike(name, Arrays.equals(here, there) ? 0 : 1);
                yield "nothing: " + here.length + " pieces";
            }
        };
    }

    /// The most that speeds, and their standard uncertainties where there are, differ by.
    private static String ofSpeeds(double[] there, int columns) {
        var here = Fitting.smoothed(FitInputs.ride());
        double speeds = 0;
        double uncertainties = 0;
        double leastU = Double.POSITIVE_INFINITY;
        for (int i = 0; i < here.size(); i++) {
            Smoother.State state = here.get(i);
            speeds = Math.max(speeds, Math.abs(state.speedMps() - there[i * columns]));
            if (columns > 1) {
                uncertainties = Math.max(uncertainties, Math.abs(state.speedSd() - there[i * columns + 1]));
            }
            leastU = Math.min(leastU, state.speedSd());
        }
        requireAlike("smooth", Math.max(speeds, uncertainties) / leastU);
        return String.format(Locale.ROOT, "%.0e m/s", Math.max(speeds, uncertainties));
    }

    /// The most that parameters and their standard uncertainties differ by, in the latter. There: cost, all
    /// parameters, all uncertainties; of them as many are compared as are given here.
    private static String ofFit(double[] values, double[] uncertainties, double[] there, int all) {
        double most = 0;
        for (int i = 0; i < values.length; i++) {
            most = Math.max(most, Math.abs(values[i] - there[1 + i]) / uncertainties[i]);
            most = Math.max(most, Math.abs(uncertainties[i] - there[1 + all + i]) / uncertainties[i]);
        }
        requireAlike("fit", most);
        return String.format(Locale.ROOT, "%.0e u", most);
    }

    private static void requireAlike(String name, double ofU) {
        if (!(ofU <= MOST_OF_U)) {
            throw new IllegalStateException(name + ": differs by " + ofU + " of a standard uncertainty");
        }
    }

    private static double[] read(Path file) throws IOException {
        var doubles = ByteBuffer.wrap(Files.readAllBytes(file))
                .order(ByteOrder.LITTLE_ENDIAN)
                .asDoubleBuffer();
        double[] values = new double[doubles.remaining()];
        doubles.get(values);
        return values;
    }
}
