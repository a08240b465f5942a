package org.measuredmile.benchmark;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/// Time that the measuring thread itself computed, which others at work on the same machine do not lengthen.
///
/// Not in it: the collector's and the compiler's own threads.
@State(Scope.Thread)
@AuxCounters(AuxCounters.Type.EVENTS)
public class Cpu {
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static final long WARM_NS = 3_000_000_000L;
    private static final long MOST_NS = 120_000_000_000L;

    /// Nanoseconds of this iteration, and how many operations they were.
    public double ns;

    public double operations;
    private boolean warm;

    /// What is measured.
    public interface Work<T> {
        T run() throws Exception;
    }

    @Setup(Level.Iteration)
    public void clear() {
        ns = 0;
        operations = 0;
    }

    /// Does the work until this thread has computed for some seconds, so that a compiler on a loaded machine
    /// has come to it before anything is measured; after two minutes by the clock it gives up waiting.
    private static void warm(Work<?> work) throws Exception {
        long endCpu = THREADS.getCurrentThreadCpuTime() + WARM_NS;
        long end = System.nanoTime() + MOST_NS;
        while (THREADS.getCurrentThreadCpuTime() < endCpu && System.nanoTime() < end) {
            work.run();
        }
    }

    <T> T of(Work<T> work) throws Exception {
        if (!warm) {
            warm = true;
            warm(work);
        }
        long before = THREADS.getCurrentThreadCpuTime();
        T answer = work.run();
        ns += THREADS.getCurrentThreadCpuTime() - before;
        operations++;
        return answer;
    }
}
