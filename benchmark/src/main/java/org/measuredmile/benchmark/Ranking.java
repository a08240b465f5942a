package org.measuredmile.benchmark;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import org.measuredmile.comparison.standing.Entrant;
import org.measuredmile.comparison.standing.RankDraws;
import org.measuredmile.comparison.standing.Workers;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.day.Variant;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/// The chance of every rank for a thousand invented bikes in one figure: few runs each, and one of four tapes.
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(java.util.concurrent.TimeUnit.MILLISECONDS)
public class Ranking {
    static final int BIKES = 1000;

    @Param({"5000", "10000", "20000"})
    public int draws = RankDraws.DRAWS;

    private List<Entrant> entrants = List.of();

    @Setup
    public void invent() {
        entrants = figure(0);
    }

    @Benchmark
    public RankDraws rank(Cpu cpu) throws Exception {
        return cpu.of(() -> RankDraws.of(entrants, true, draws, Workers.ONE));
    }

    /// The bikes in one of several invented figures, in their order.
    static List<Entrant> figure(int number) {
        var random = new Seed(20_310_514).stream(number);
        return IntStream.range(0, BIKES)
                .mapToObj(i -> bike("bike-" + i, random))
                .sorted(Comparator.comparingDouble(Entrant::value))
                .toList();
    }

    private static Entrant bike(String id, RandomGenerator random) {
        double value = Draw.normal(random, 6, 0.6);
        var budget = Budget.of(
                Contribution.typeA("runs", Draw.rectangular(random, 0.1, 0.2), 2 + random.nextInt(6)),
                Contribution.typeB("calibration", 0.005 * value).sharedAs("tape " + random.nextInt(4)));
        return new Entrant(
                id,
                id,
                "cargo",
                "invented",
                "both",
                LocalDate.of(2031, 5, 14),
                Variant.NONE,
                1,
                value,
                budget.around(value),
                budget.contributions());
    }
}
