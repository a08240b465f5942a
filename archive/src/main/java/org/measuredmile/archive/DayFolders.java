package org.measuredmile.archive;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.recording.day.DayFolder;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/// Test days on disk: a folder to a [DayFolder] and back.
///
/// Shape: what day.yaml points to outside its folder (the bike's folder, courses by id) is brought along under `bike/`
/// and `courses/`; what lies inside the folder stands before it.
public final class DayFolders {
    private static final String RECORDINGS = "recordings/";
    private static final List<String> BIKE_FILES = List.of("bike.yaml", "spec.csv");

    private DayFolders() {}

    /// The test day that a folder holds. Whether it makes sense is for its reader to say; only files are looked for
    /// here.
    ///
    /// Error: IOException when the folder or a file of it cannot be read.
    public static DayFolder read(Path folder) throws IOException {
        var files = new TreeMap<String, Path>();
        try (var all = Files.walk(folder)) {
            all.filter(Files::isRegularFile)
                    .filter(file -> !isHidden(folder, file))
                    .forEach(file -> files.put(pathInside(folder, file), file));
        }
        var dayFile = files.get("day.yaml");
        if (dayFile != null) {
            var pointers = Pointers.in(new String(Files.readAllBytes(dayFile), StandardCharsets.UTF_8), dayFile);
            bringBike(folder, pointers, files);
            for (String id : pointers.courses()) {
                bringCourse(folder, id, files);
            }
        }
        return of(folder.toAbsolutePath().normalize().getFileName().toString(), files);
    }

    /// Writes a test day into a folder that is empty or does not exist yet.
    public static void write(DayFolder day, Path folder) throws IOException {
        for (var text : day.texts().entrySet()) {
            var path = inside(folder, text.getKey());
            Files.createDirectories(path.getParent());
            Files.write(path, text.getValue());
        }
        for (var recording : day.recordings().entrySet()) {
            var path = inside(folder, RECORDINGS + recording.getKey());
            Files.createDirectories(path.getParent());
            try (var content = recording.getValue().open()) {
                Files.copy(content, path);
            }
        }
    }

    static DayFolder of(String name, SortedMap<String, Path> files) throws IOException {
        var texts = new TreeMap<String, byte[]>();
        var recordings = new TreeMap<String, DayFolder.ByteSource>();
        for (var file : files.entrySet()) {
            if (file.getKey().startsWith(RECORDINGS)) {
                recordings.put(
                        file.getKey().substring(RECORDINGS.length()), () -> Files.newInputStream(file.getValue()));
            } else {
                texts.put(file.getKey(), Files.readAllBytes(file.getValue()));
            }
        }
        return new DayFolder(name, texts, recordings);
    }

    /// A path under a folder, however it was written.
    ///
    /// Error: IOException when it would lead out of the folder.
    static Path inside(Path folder, String path) throws IOException {
        var root = folder.toAbsolutePath().normalize();
        var wanted = root.resolve(path).normalize();
        if (!wanted.startsWith(root) || wanted.equals(root)) {
            throw new IOException("\"" + path + "\" leads out of " + folder);
        }
        return wanted;
    }

    private static boolean isHidden(Path folder, Path file) {
        for (var part : folder.relativize(file)) {
            if (part.toString().startsWith(".")) {
                return true;
            }
        }
        return false;
    }

    private static String pathInside(Path folder, Path file) {
        var parts = new ArrayList<String>();
        folder.relativize(file).forEach(part -> parts.add(part.toString()));
        return String.join("/", parts);
    }

    private static void bringBike(Path folder, Pointers pointers, SortedMap<String, Path> files) {
        if (files.containsKey("bike/bike.yaml")) {
            return;
        }
        pointers.bike().flatMap(path -> bikeFolder(folder, path)).ifPresent(place -> {
            for (String name : BIKE_FILES) {
                if (Files.isRegularFile(place.resolve(name))) {
                    files.put("bike/" + name, place.resolve(name));
                }
            }
        });
    }

    /// The bike's folder as a path from the day's folder, or by its id in `bikes/` beside or above it.
    private static Optional<Path> bikeFolder(Path folder, String written) {
        var root = folder.toAbsolutePath().normalize();
        var candidates = new ArrayList<>(List.of(root.resolve(written)));
        for (var above = root.getParent(); above != null && candidates.size() < 3; above = above.getParent()) {
            candidates.add(above.resolve("bikes").resolve(written));
        }
        return candidates.stream()
                .map(place -> place.endsWith("bike.yaml") ? place.resolveSibling("") : place)
                .filter(place -> Files.isRegularFile(place.resolve("bike.yaml")))
                .findFirst();
    }

    private static void bringCourse(Path folder, String id, SortedMap<String, Path> files) throws IOException {
        String inside = "courses/" + id + ".yaml";
        if (files.containsKey(inside)) {
            return;
        }
        var root = folder.toAbsolutePath().normalize();
        var candidates = new ArrayList<Path>();
        candidates.add(root.resolve("courses").resolve(id).resolve("course.yaml"));
        for (var above = root.getParent(); above != null && candidates.size() < 5; above = above.getParent()) {
            candidates.add(above.resolve("courses").resolve(id + ".yaml"));
            candidates.add(above.resolve("courses").resolve(id).resolve("course.yaml"));
        }
        var found = candidates.stream().filter(Files::isRegularFile).findFirst();
        if (found.isPresent()) {
            files.put(inside, found.get());
            bringProfile(found.get(), files);
        }
    }

    /// The profile that a course's file names, from beside it.
    private static void bringProfile(Path course, SortedMap<String, Path> files) throws IOException {
        var keys = Pointers.keys(new String(Files.readAllBytes(course), StandardCharsets.UTF_8), course);
        if (keys.get("profile") instanceof String name && !name.isEmpty() && !name.matches("(?s).*[/\\\\].*")) {
            var beside = course.resolveSibling(name);
            if (Files.isRegularFile(beside)) {
                files.putIfAbsent("courses/" + name, beside);
            }
        }
    }

    /// What day.yaml points to.
    private record Pointers(Optional<String> bike, List<String> courses) {
        /// Only the two places are looked at; faults of the file are for its reader to name.
        static Pointers in(String yaml, Path file) {
            var day = keys(yaml, file);
            var bike = day.get("bike") instanceof String text ? Optional.of(text) : Optional.<String>empty();
            return new Pointers(bike, courses(day.get("courses")));
        }

        /// The outermost keys of a file; none where it cannot be read.
        static Map<?, ?> keys(String yaml, Path file) {
            try {
                var settings = LoadSettings.builder().setLabel(file.toString()).build();
                return new Load(settings).loadFromString(yaml) instanceof Map<?, ?> keys ? keys : Map.of();
            } catch (YamlEngineException unreadable) {
                return Map.of();
            }
        }

        private static List<String> courses(@org.jspecify.annotations.Nullable Object written) {
            if (!(written instanceof List<?> list)) {
                return List.of();
            }
            return list.stream()
                    .filter(String.class::isInstance)
                    .map(String.class::cast)
                    .filter(id -> id.matches("[\\p{L}\\p{N}._-]+") && !id.contains(".."))
                    .toList();
        }
    }
}
