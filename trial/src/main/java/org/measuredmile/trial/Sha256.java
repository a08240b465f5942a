package org.measuredmile.trial;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
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

    /// A stream that hashes what is read from it. Closing it does nothing, so that a reader that closes early
    /// cannot cut
    /// the hash short; whoever opened the source closes it.
    public static final class Hashing extends DigestInputStream {
        public Hashing(InputStream content) {
            super(content, digest());
        }

        @Override
        public void close() {
            // Left open on purpose: see the class.
        }

        /// The hash of all the content; reads what is left of it first.
        public String finish() throws IOException {
            transferTo(OutputStream.nullOutputStream());
            return HexFormat.of().formatHex(getMessageDigest().digest());
        }
    }

    private static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("this Java has no SHA-256", missing);
        }
    }
}
