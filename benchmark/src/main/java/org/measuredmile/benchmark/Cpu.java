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

    /// Nanoseconds of this iteration, and how many operations they were.
    public double ns;

    public double operations;

    /// What is measured.
    public interface Work<T> {
        T run() throws Exception;
    }

    @Setup(Level.Iteration)
    public void clear() {
        ns = 0;
        operations = 0;
    }

    <T> T of(Work<T> work) throws Exception {
        long before = THREADS.getCurrentThreadCpuTime();
        T answer = work.run();
        ns += THREADS.getCurrentThreadCpuTime() - before;
        operations++;
        return answer;
    }
}
