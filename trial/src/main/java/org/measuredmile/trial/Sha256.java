package org.measuredmile.trial;

import java.io.IOException;
import java.io.InputStream;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/// The name that content has by itself: SHA-256 in lower-case hexadecimal.
///
/// Source: FIPS 180-4.
public final class Sha256 {
    private Sha256() {}

    public static String of(byte[] content) {
        return HexFormat.of().formatHex(digest().digest(content));
    }

    /// A stream that counts into a digest while it is read.
    public static DigestInputStream over(InputStream content) {
        return new DigestInputStream(content, digest());
    }

    /// The hash of everything that a stream of [#over] held; reads what is left of it first.
    public static String finish(DigestInputStream stream) throws IOException {
        stream.transferTo(java.io.OutputStream.nullOutputStream());
        return HexFormat.of().formatHex(stream.getMessageDigest().digest());
    }

    private static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("this Java has no SHA-256", missing);
        }
    }
}
