package org.measuredmile.recording.reader;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.Decoding.Decoded;
import org.measuredmile.recording.reader.Decoding.Refused;

/// The collection of real recordings that lies beside the repository, with what is known of each.
///
/// It is not part of the repository: where it is missing, tests that need it are skipped and say so.
final class SharedRecordings {
    private static final List<String> FOLDERS =
            List.of("gpx", "tcx", "nmea", "csv-gnss", "csv-imu", "csv-power", "csv-ebike", "csv-ev", "rig");

    private static final Map<String, Recording> DECODED = new ConcurrentHashMap<>();

    private SharedRecordings() {}

    /// One line of the table of known values.
    record Known(String file, String item, String value, String unit, String by) {
        double number() {
            return Double.parseDouble(value);
        }

        double tolerance(double share) {
            return Math.max(Math.abs(number()) * share, 0.051);
        }

        @Override
        public String toString() {
            return file + ": " + item + " " + value + " " + unit;
        }
    }

    static Optional<Path> folder() {
        for (Path at = Path.of("").toAbsolutePath(); at != null; at = at.getParent()) {
            Path candidate = at.resolve("shared").resolve("recordings");
            if (Files.isRegularFile(candidate.resolve("EXPECTED.csv"))) {
                return Optional.of(candidate);
            }
        }
        return Optional.empty();
    }

    /// Every row of the table, each once.
    static List<Known> rows() {
        return lines();
    }

    /// What is known of the files in one folder, for a format whose items are its own.
    static Stream<Known> knownIn(String part) {
        return lines().stream().filter(known -> known.file.startsWith(part + "/"));
    }

    private static List<Known> lines() {
        Optional<Path> folder = folder();
        if (folder.isEmpty()) {
            return List.of();
        }
        List<Known> known = new ArrayList<>();
        try (CsvReader<NamedCsvRecord> rows =
                CsvReader.builder().ofNamedCsvRecord(folder.get().resolve("EXPECTED.csv"))) {
            for (NamedCsvRecord row : rows) {
                known.add(new Known(
                        row.getField("file"),
                        row.getField("item"),
                        row.getField("value"),
                        row.getField("unit"),
                        row.getField("computed_by")));
            }
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
        return known.stream().distinct().toList();
    }

    static List<String> files() {
        return folder().map(SharedRecordings::filesIn).orElse(List.of());
    }

    private static List<String> filesIn(Path folder) {
        List<String> files = new ArrayList<>();
        for (String part : FOLDERS) {
            try (Stream<Path> paths = Files.list(folder.resolve(part))) {
                paths.sorted().forEach(path -> files.add(part + "/" + path.getFileName()));
            } catch (IOException broken) {
                throw new UncheckedIOException(broken);
            }
        }
        return files;
    }

    static byte[] bytes(String file) {
        try {
            return Files.readAllBytes(folder().orElseThrow().resolve(file));
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    static Decoding decode(String file) {
        return decode(file, bytes(file));
    }

    static Decoding decode(String file, byte[] bytes) {
        try {
            return Readers.decode(file.substring(file.indexOf('/') + 1), new ByteArrayInputStream(bytes));
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    static Recording recording(String file) {
        return DECODED.computeIfAbsent(file, key -> recording(key, bytes(key)));
    }

    static Recording recording(String file, byte[] bytes) {
        return switch (decode(file, bytes)) {
            case Decoded(Recording recording) -> recording;
            case Refused refused -> throw new AssertionError(file + " was refused: " + refused.findings());
        };
    }

    /// The lines of a file that hold a piece of text, the first line included on demand.
    static byte[] linesWith(String file, String piece, boolean firstToo) {
        String text = new String(bytes(file), StandardCharsets.ISO_8859_1);
        StringBuilder kept = new StringBuilder();
        boolean first = firstToo;
        for (String line : text.lines().toList()) {
            if (first || line.contains(piece)) {
                kept.append(line).append('\n');
            }
            first = false;
        }
        return kept.toString().getBytes(StandardCharsets.ISO_8859_1);
    }
}
