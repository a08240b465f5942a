package org.measuredmile.recording.reader;

import java.util.Arrays;
import java.util.List;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.Recording;

/// Reads FIT files that were put together for a test.
final class FitRead {
    private FitRead() {}

    static Recording read(byte[] bytes) {
        Recording recording = Decode.recording(Decode.bytes("ride.fit", bytes));
        ReaderContract.holds(recording);
        return recording;
    }

    static Recording read(FitWriter writer) {
        return read(writer.bytes());
    }

    static Channel named(Recording recording, String name) {
        return recording.channels().stream()
                .filter(channel -> channel.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " is not among " + recording.channels()));
    }

    static List<String> codes(Recording recording) {
        return recording.findings().stream().map(finding -> finding.code()).toList();
    }

    static byte[] joined(byte[]... parts) {
        var all = new java.io.ByteArrayOutputStream();
        Arrays.stream(parts).forEach(all::writeBytes);
        return all.toByteArray();
    }
}
