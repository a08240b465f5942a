package org.measuredmile.benchmark;

import java.io.IOException;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.charset.StandardCharsets;
import java.util.function.IntFunction;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.Decoding.Decoded;
import org.measuredmile.recording.reader.Readers;

/// Reads a GPX file of 200 MB that is made up while it is read, in whatever heap the process was given, and says how
/// much of it was ever in use. usage: PeakHeap; prints the peak, what the recording holds, and the file, in MB.
final class PeakHeap {
    private static final long BYTES = 200_000_000;

    private PeakHeap() {}

    static void main() throws IOException {
        var file = new LongRide(BYTES);
        if (!(Readers.decode("long.gpx", file) instanceof Decoded(Recording recording))) {
            throw new IllegalStateException("the long ride was refused");
        }
        double peak = ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(pool -> pool.getType() == MemoryType.HEAP)
                .mapToLong(pool -> pool.getPeakUsage().getUsed())
                .sum();
        System.gc();
        double held = ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(pool -> pool.getType() == MemoryType.HEAP)
                .map(MemoryPoolMXBean::getUsage)
                .mapToLong(java.lang.management.MemoryUsage::getUsed)
                .sum();
        System.out.printf("%.0f %.0f %.0f %d%n", peak / 1e6, held / 1e6, file.given / 1e6, recording.samples());
    }

    /// A ride at 25 Hz, point by point, until so many bytes were given.
    private static final class LongRide extends InputStream {
        private static final long STEP_MS = 40;

        private final long bytes;
        private final IntFunction<String> point = index -> {
            var time = Rides.START.plusMillis(index * STEP_MS);
            return "<trkpt lat=\"45." + (1_000_000 + index) + "\" lon=\"10." + (1_000_000 + index % 5_000_000)
                    + "\"><ele>" + (100 + index % 50) + ".5</ele><time>" + time + "</time><speed>"
                    + (4 + index % 7) + ".25</speed></trkpt>\n";
        };
        private byte[] piece = "<gpx version=\"1.0\"><trk><trkseg>\n".getBytes(StandardCharsets.UTF_8);
        private int at;
        private int index;
        private boolean ended;
        private long given;

        LongRide(long bytes) {
            this.bytes = bytes;
        }

        @Override
        public int read() {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
        }

        @Override
        public int read(byte[] to, int offset, int length) {
            if (at == piece.length && !more()) {
                return -1;
            }
            int count = Math.min(length, piece.length - at);
            System.arraycopy(piece, at, to, offset, count);
            at += count;
            given += count;
            return count;
        }

        private boolean more() {
            if (ended) {
                return false;
            }
            var text = new StringBuilder();
            for (int i = 0; i < 100 && given < bytes; i++) {
                text.append(point.apply(index++));
            }
            if (given >= bytes) {
                text.append("</trkseg></trk></gpx>\n");
                ended = true;
            }
            piece = text.toString().getBytes(StandardCharsets.UTF_8);
            at = 0;
            return true;
        }
    }
}
