package org.measuredmile.recording;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;

/// What reading costs, held to what its input's size allows.
public final class Spent {
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    /// Buffers of the libraries, and patterns compiled at first use.
    private static final long FREE_BYTES = 64_000_000;
    /// Cells of eight bytes, a few times over, for each byte that came in, and objects for findings, take some
    /// hundreds; the rest is what the fuzzer's hooks allocate at each step of a pattern, replaying too.
    private static final long BYTES_A_BYTE = 20_000;
    /// Seconds of a slow machine under a searching test's measuring.
    private static final double FREE_S = 3;
    private static final double SECONDS_A_BYTE = 20e-6;

    private Spent() {}

    /// Something that reads and may meet a broken stream.
    public interface Reading<T> {
        T read() throws IOException;
    }

    /// What is read, when reading it took no more memory and time of this thread than its size allows.
    ///
    /// What is over is read once more, because whoever comes first pays for loading classes.
    public static <T> T within(int bytes, Reading<T> reading) throws IOException {
        long mostBytes = FREE_BYTES + BYTES_A_BYTE * bytes;
        double mostS = FREE_S + SECONDS_A_BYTE * bytes;
        Cost<T> first = Cost.of(reading);
        Cost<T> cost = first.bytes > mostBytes || first.cpuS > mostS ? Cost.of(reading) : first;
        assertThat(cost.bytes).as("bytes allocated for %d bytes read", bytes).isLessThanOrEqualTo(mostBytes);
        assertThat(cost.cpuS).as("seconds for %d bytes read", bytes).isLessThanOrEqualTo(mostS);
        return cost.answer;
    }

    private record Cost<T>(T answer, long bytes, double cpuS) {
        static <T> Cost<T> of(Reading<T> reading) throws IOException {
            long thread = Thread.currentThread().threadId();
            long bytesBefore = THREADS.getThreadAllocatedBytes(thread);
            long cpuBefore = THREADS.getCurrentThreadCpuTime();
            T answer = reading.read();
            double cpuS = (THREADS.getCurrentThreadCpuTime() - cpuBefore) / 1e9;
            return new Cost<>(answer, THREADS.getThreadAllocatedBytes(thread) - bytesBefore, cpuS);
        }
    }
}
