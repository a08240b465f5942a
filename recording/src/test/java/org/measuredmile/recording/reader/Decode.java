package org.measuredmile.recording.reader;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Objects;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.Decoding.Decoded;
import org.measuredmile.recording.reader.Decoding.Refused;

/// Decoding of small texts and of the recordings among the test resources.
final class Decode {
    private Decode() {}

    static Decoding bytes(String name, byte[] bytes) {
        try {
            return Readers.decode(name, new ByteArrayInputStream(bytes));
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    static Recording recording(String name, String text) {
        return recording(bytes(name, text.getBytes(UTF_8)));
    }

    static Recording recording(Decoding decoding) {
        return switch (decoding) {
            case Decoded(Recording recording) -> recording;
            case Refused refused -> throw new AssertionError("refused: " + refused.findings());
        };
    }

    static Finding refusal(String name, String text) {
        return refusal(bytes(name, text.getBytes(UTF_8)));
    }

    static Finding refusal(Decoding decoding) {
        return switch (decoding) {
            case Decoded(Recording recording) -> throw new AssertionError("decoded: " + recording.counts());
            case Refused refused -> refused.findings().getFirst();
        };
    }

    static Finding finding(Recording recording, String code) {
        return recording.findings().stream()
                .filter(finding -> finding.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + code + " in " + recording.findings()));
    }

    static byte[] resource(String name) {
        try (InputStream in = Decode.class.getResourceAsStream("/recordings/" + name)) {
            return Objects.requireNonNull(in, name).readAllBytes();
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}
