package org.measuredmile.archive;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.DigestInputStream;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;

/// Files by the SHA-256 of their content: `content/ab/cdef…`.
///
/// Shape: a file is written beside its place, forced to disk and moved there in one step, so that whatever stands under
/// a hash is whole. Every read is checked against the hash; a difference is an [IOException] that names it.
public final class ContentStore {
    private final Path root;

    ContentStore(Path root) {
        this.root = root;
    }

    /// Keeps a content and says under which hash.
    public Revision.StoredFile put(InputStream content) throws IOException {
        Files.createDirectories(root);
        var incoming = Files.createTempFile(root, "incoming-", ".part");
        try {
            var digest = sha256();
            long bytes;
            try (var out = new DigestOutputStream(Files.newOutputStream(incoming), digest)) {
                bytes = content.transferTo(out);
            }
            String hash = HexFormat.of().formatHex(digest.digest());
            var place = place(hash);
            if (!Files.exists(place) || !hash.equals(hashOf(place))) {
                force(incoming);
                Files.createDirectories(place.getParent());
                Files.move(incoming, place, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            }
            return new Revision.StoredFile(hash, bytes);
        } finally {
            Files.deleteIfExists(incoming);
        }
    }

    /// The whole content.
    public byte[] read(String sha256) throws IOException {
        try (var in = open(sha256)) {
            return in.readAllBytes();
        }
    }

    /// The content as a stream, which fails at its end when it was not what the hash says.
    public InputStream open(String sha256) throws IOException {
        return new Checked(Files.newInputStream(place(sha256)), sha256);
    }

    /// What is wrong with the content of a hash; empty when nothing is.
    public Optional<String> fault(String sha256) {
        try {
            if (!Files.exists(place(sha256))) {
                return Optional.of("is missing");
            }
            String found = hashOf(place(sha256));
            return found.equals(sha256) ? Optional.empty() : Optional.of("now has the hash " + found);
        } catch (IOException trouble) {
            return Optional.of("cannot be read: " + trouble.getMessage());
        }
    }

    /// The hash of some bytes, as 64 hexadecimal digits.
    public static String hashOf(byte[] content) {
        return HexFormat.of().formatHex(sha256().digest(content));
    }

    private static String hashOf(Path file) throws IOException {
        var digest = sha256();
        try (var in = new DigestInputStream(Files.newInputStream(file), digest)) {
            in.transferTo(java.io.OutputStream.nullOutputStream());
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    Path place(String sha256) {
        return root.resolve(sha256.substring(0, 2)).resolve(sha256.substring(2));
    }

    private static void force(Path file) throws IOException {
        try (var channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }

    /// Compares the hash once the stream has been read to its end.
    private static final class Checked extends FilterInputStream {
        private final DigestInputStream digesting;
        private final String wanted;
        private boolean done;

        Checked(InputStream in, String wanted) {
            this(new DigestInputStream(in, sha256()), wanted);
        }

        private Checked(DigestInputStream in, String wanted) {
            super(in);
            this.digesting = in;
            this.wanted = wanted;
        }

        @Override
        public int read() throws IOException {
            return checked(super.read());
        }

        @Override
        public int read(byte[] buffer, int from, int length) throws IOException {
            return checked(super.read(buffer, from, length));
        }

        @Override
        public boolean markSupported() {
            return false;
        }

        @Override
        public long skip(long bytes) throws IOException {
            // What is skipped counts for the hash too, so it has to be read.
            return readNBytes((int) Math.min(bytes, 65_536)).length;
        }

        private int checked(int result) throws IOException {
            if (result == -1 && !done) {
                done = true;
                String found =
                        HexFormat.of().formatHex(digesting.getMessageDigest().digest());
                if (!found.equals(wanted)) {
                    throw new IOException("content " + wanted + " has been changed: it now has the hash " + found);
                }
            }
            return result;
        }
    }
}
