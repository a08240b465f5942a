package org.measuredmile.desk.coverage;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
import org.measuredmile.demo.ride.SimulatedTrial;

/// Several coverage studies at once, one a processor.
///
/// Shape: rows by study, then by seed, whichever was done first.
public final class CoverageStudies {
    private CoverageStudies() {}

    /// Told what is being simulated, and how many days of all are done; by one thread at a time.
    @FunctionalInterface
    public interface Progress {
        void step(String title, long done, long all);
    }

    public static List<Coverage> run(List<SimulatedTrial> studies, List<Long> seeds, int days, Progress progress) {
        long all = (long) studies.size() * seeds.size() * days;
        var done = new AtomicLong();
        var work = new ArrayList<Callable<List<Coverage>>>();
        for (var study : studies) {
            for (long seed : seeds) {
                work.add(() -> CoverageStudy.run(study, seed, days, _ -> {
                    synchronized (done) {
                        progress.step(study.title(), done.incrementAndGet(), all);
                    }
                }));
            }
        }
        try (var pool = Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors())) {
            var rows = new ArrayList<Coverage>();
            for (var future : pool.invokeAll(work)) {
                rows.addAll(result(future));
            }
            return rows;
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("stopped while simulating", stopped);
        }
    }

    private static List<Coverage> result(Future<List<Coverage>> future) throws InterruptedException {
        try {
            return future.get();
        } catch (ExecutionException failed) {
            throw new IllegalStateException("a study failed", failed.getCause());
        }
    }
}
