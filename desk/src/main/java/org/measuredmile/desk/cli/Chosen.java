package org.measuredmile.desk.cli;

import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.measuredmile.archive.Archive;
import picocli.CommandLine.Option;

/// Which archive a command works on.
final class Chosen {
    private static final String OWN = "crew-archive";
    private static final String DEMO = "demo-archive";

    @Option(
            names = "--archive",
            paramLabel = "PATH",
            description = "the archive's folder (default: " + OWN + " in the current folder)")
    private @Nullable Path path;

    @Option(names = "--demo", description = "the archive of the invented fleet that `mile demo` makes")
    private boolean demo;

    Path folder() {
        if (path != null && demo) {
            throw new Trouble("--archive and --demo name two archives: leave one of them out");
        }
        if (path != null) {
            return path;
        }
        return demo ? demoFolder() : Path.of(OWN);
    }

    boolean isDemo() {
        return demo;
    }

    boolean isNamed() {
        return path != null;
    }

    /// An archive that is there.
    Archive open() {
        var folder = folder();
        if (!Archive.isArchive(folder)) {
            throw new Trouble(folder + ": no archive is there; "
                    + (demo
                            ? "make it with: mile demo"
                            : "take a test day in with: mile import DAY --archive " + folder
                                    + ", or name another with --archive or --demo"));
        }
        return Archive.open(folder, Clock.systemUTC());
    }

    /// The archive, made when it is not there.
    Archive openOrMake() {
        var folder = folder();
        if (Files.isRegularFile(folder)) {
            throw new Trouble(folder + ": is a file; name a folder for the archive");
        }
        return Archive.open(folder, Clock.systemUTC());
    }

    /// Beside the program's own sources when it runs from them, else in the user's cache.
    static Path demoFolder() {
        return project()
                .map(root -> root.resolve(DEMO))
                .orElseGet(() -> Path.of(System.getProperty("user.home"), ".cache", "measured-mile", DEMO));
    }

    private static Optional<Path> project() {
        try {
            var source = Chosen.class.getProtectionDomain().getCodeSource();
            if (source == null) {
                return Optional.empty();
            }
            for (var at = Path.of(source.getLocation().toURI()); at != null; at = at.getParent()) {
                if (Files.isRegularFile(at.resolve("mile")) && Files.isRegularFile(at.resolve("pom.xml"))) {
                    return Optional.of(at);
                }
            }
        } catch (URISyntaxException notAPath) {
            return Optional.empty();
        }
        return Optional.empty();
    }
}
