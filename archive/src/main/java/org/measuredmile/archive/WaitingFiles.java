package org.measuredmile.archive;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/// Files that were sent and that nothing in the archive names yet.
///
/// Shape: kept by hash beside the content store. A day that names one takes it over; one that nothing has named for
/// [#LONGEST] is removed when the next file comes, or when the archive is opened.
public final class WaitingFiles {
    /// So long does a file wait to be named.
    public static final Duration LONGEST = Duration.ofHours(24);

    private final Path root;
    private final ContentStore files;
    private final Clock clock;

    WaitingFiles(Path root, Clock clock) throws IOException {
        this.root = root;
        this.files = new ContentStore(root);
        this.clock = clock;
        removeOld();
    }

    /// Keeps a file until it is named, and says under which hash.
    public Revision.StoredFile put(InputStream content) throws IOException {
        removeOld();
        var kept = files.put(content);
        Files.setLastModifiedTime(files.place(kept.sha256()), FileTime.from(clock.instant()));
        return kept;
    }

    /// The file of a hash as it came; empty where none waits under it.
    public Optional<InputStream> open(String sha256) throws IOException {
        try {
            return Optional.of(files.open(sha256));
        } catch (NoSuchFileException _) {
            return Optional.empty();
        }
    }

    /// Whether a whole file waits under a hash.
    public boolean holds(String sha256) {
        return files.fault(sha256).isEmpty();
    }

    /// Removes files that were taken over.
    public void taken(List<String> hashes) throws IOException {
        for (String sha256 : hashes) {
            Files.deleteIfExists(files.place(sha256));
        }
    }

    private void removeOld() throws IOException {
        if (!Files.isDirectory(root)) {
            return;
        }
        Instant oldest = clock.instant().minus(LONGEST);
        try (var all = Files.walk(root)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                removeIfOld(file, oldest);
            }
        }
    }

    /// A file that another process removed meanwhile is no trouble.
    private static void removeIfOld(Path file, Instant oldest) throws IOException {
        try {
            if (Files.getLastModifiedTime(file).toInstant().isBefore(oldest)) {
                Files.deleteIfExists(file);
            }
        } catch (NoSuchFileException _) {
            return;
        }
    }
}
