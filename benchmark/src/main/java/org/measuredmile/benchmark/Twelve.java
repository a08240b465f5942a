package org.measuredmile.benchmark;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.measuredmile.comparison.standing.Entrant;
import org.measuredmile.comparison.standing.RankDraws;
import org.measuredmile.comparison.standing.Workers;

/// A thousand bikes in twelve figures, ranked by 20,000 draws on two threads of a process that has just begun; prints
/// the seconds by the clock and the seconds that the two computed.
final class Twelve {
    private static final int FIGURES = 12;
    private static final int THREADS = 2;

    private Twelve() {}

    private static final class Pair implements Workers {
        private final ExecutorService pool;
        private double computedNs;

        private Pair(ExecutorService pool) {
            this.pool = pool;
        }

        @Override
        public int count() {
            return THREADS;
        }

        @Override
        public <T> List<T> all(List<Supplier<T>> parts) {
            var begun = new ArrayList<Future<Timed<T>>>();
            parts.forEach(part -> begun.add(pool.submit(() -> timed(part))));
            var done = new ArrayList<T>();
            for (var one : begun) {
                try {
                    var timed = one.get();
                    computedNs += timed.ns();
                    done.add(timed.value());
                } catch (InterruptedException | java.util.concurrent.ExecutionException failure) {
                    throw new IllegalStateException(failure);
                }
            }
            return done;
        }
    }

    private record Timed<T>(T value, double ns) {}

    private static <T> Timed<T> timed(Supplier<T> part) {
        var threads = ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadCpuTime();
        T value = part.get();
        return new Timed<>(value, threads.getCurrentThreadCpuTime() - before);
    }

    static void main(String[] arguments) {
        List<List<Entrant>> figures =
                IntStream.range(0, FIGURES).mapToObj(Ranking::figure).toList();
        try (var pool = Executors.newFixedThreadPool(THREADS)) {
            var workers = new Pair(pool);
            long before = System.nanoTime();
            for (var figure : figures) {
                RankDraws.of(figure, true, RankDraws.DRAWS, workers);
            }
            double wall = (System.nanoTime() - before) / 1e9;
            System.out.printf(Locale.ROOT, "%.2f %.2f%n", wall, workers.computedNs / 1e9);
        }
    }
}
