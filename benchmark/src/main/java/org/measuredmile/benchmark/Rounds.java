package org.measuredmile.benchmark;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.ChainedOptionsBuilder;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/// Measurements in rounds: in each, whatever is compared runs one right after the other, each in a fresh process.
///
/// Unit: milliseconds of the measuring thread's own computing time for each operation.
final class Rounds {
    private final int rounds;
    private final Map<String, List<Double>> ms = new TreeMap<>();

    Rounds(int rounds) {
        this.rounds = rounds;
    }

    /// One thing to measure: a method of a benchmark class, with values of its parameters.
    record Case(String name, String benchmark, Map<String, String> parameters) {}

    void measure(List<Case> cases) throws RunnerException {
        for (int round = 0; round < rounds; round++) {
            for (Case each : round % 2 == 0 ? cases : cases.reversed()) {
                double measured = once(each);
                ms.computeIfAbsent(each.name(), key -> new ArrayList<>()).add(measured);
                System.err.printf("  round %d  %-16s %8.2f ms%n", round + 1, each.name(), measured);
            }
        }
    }

    private static double once(Case each) throws RunnerException {
        ChainedOptionsBuilder options = new OptionsBuilder()
                .include("^" + each.benchmark().replace(".", "\\.") + "$")
                .forks(1)
                .warmupIterations(2)
                .warmupTime(TimeValue.seconds(1))
                .measurementIterations(5)
                .measurementTime(TimeValue.seconds(1))
                .verbosity(VerboseMode.SILENT)
                .shouldFailOnError(true)
                .jvmArgs("-Xmx512m", "--sun-misc-unsafe-memory-access=allow");
        each.parameters().forEach(options::param);
        Collection<RunResult> results = new Runner(options.build()).run();
        RunResult result = results.iterator().next();
        return counted(result, "ns") / counted(result, "operations") / 1e6;
    }

    private static double counted(RunResult result, String counter) {
        return Objects.requireNonNull(result.getSecondaryResults().get(counter), counter)
                .getScore();
    }

    double medianMs(String name) {
        return median(ms.getOrDefault(name, List.of()));
    }

    /// The median over the rounds of one case's time over another's in the same round. Rounds with an even number
    /// go backwards, so the times of a case stand in the order of the rounds all the same.
    double medianRatio(String over, String under) {
        List<Double> ratios = new ArrayList<>();
        for (int round = 0; round < rounds; round++) {
            ratios.add(ms.getOrDefault(over, List.of()).get(round)
                    / ms.getOrDefault(under, List.of()).get(round));
        }
        return median(ratios);
    }

    static double median(List<Double> values) {
        List<Double> sorted = values.stream().sorted().toList();
        return sorted.isEmpty() ? Double.NaN : sorted.get(sorted.size() / 2);
    }
}
