package org.measuredmile.desk.web.edit;

import java.io.IOException;
import java.io.InputStream;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import org.measuredmile.archive.StoredDay;
import org.measuredmile.recording.day.DayFolder;

/// Files that came in for a test day, put where they belong.
///
/// Shape: the day's own files take the place of those there (the former stay in the history); everything else is a
/// recording, and one whose name is taken by other bytes gets a number.
public final class Upload {
    private static final Set<String> OWN = Set.of("day.yaml", "runs.csv", "readings.csv", "recordings.csv");
    private static final String RECORDINGS = "recordings/";

    private Upload() {}

    /// One file: its path as sent, its bytes, and their hash.
    public record File(String path, DayFolder.ByteSource bytes, String sha256) {}

    /// The day with the files added.
    public static DayFolder into(StoredDay stored, List<File> files) throws IOException {
        var texts = new TreeMap<>(stored.folder().texts());
        var recordings = new TreeMap<>(stored.folder().recordings());
        var hashes = new TreeMap<String, String>();
        stored.revision().files().forEach((path, file) -> hashes.put(path, file.sha256()));
        for (File file : files) {
            String name = name(file.path());
            if (OWN.contains(name)) {
                texts.put(name, read(file));
            } else if (!name.isEmpty()) {
                String free = free(name, file.sha256(), hashes);
                hashes.put(RECORDINGS + free, file.sha256());
                recordings.put(free, file.bytes());
            }
        }
        return new DayFolder(stored.id(), texts, recordings);
    }

    /// The files of the one folder that holds a `day.yaml`, their paths beginning with that folder's name; none
    /// where there is no such folder or several.
    public static List<File> dayIn(List<File> files) {
        var folders = files.stream()
                .map(file -> plain(file.path()))
                .filter(path -> path.matches("(?s).+/day\\.yaml"))
                .map(path -> path.substring(0, path.length() - "day.yaml".length()))
                .sorted(Comparator.comparingInt(String::length))
                .toList();
        if (folders.isEmpty() || folders.stream().anyMatch(one -> !one.startsWith(folders.getFirst()))) {
            return List.of();
        }
        String root = folders.getFirst();
        int above = root.lastIndexOf('/', root.length() - 2) + 1;
        return files.stream()
                .filter(file -> plain(file.path()).startsWith(root))
                .map(file -> new File(plain(file.path()).substring(above), file.bytes(), file.sha256()))
                .toList();
    }

    private static String plain(String path) {
        return path.replace('\\', '/').replaceAll("(^|/)\\.\\.?(?=/|$)", "").replaceAll("^/+", "");
    }

    /// A whole folder as a day of its own, by the paths inside it.
    public static DayFolder asDay(String id, List<File> files) throws IOException {
        var texts = new TreeMap<String, byte[]>();
        var recordings = new TreeMap<String, DayFolder.ByteSource>();
        for (File file : files) {
            String inside = inside(file.path());
            if (inside.startsWith(RECORDINGS)) {
                recordings.put(name(inside), file.bytes());
            } else if (!name(inside).startsWith(".")) {
                texts.put(inside, read(file));
            }
        }
        return new DayFolder(id, texts, recordings);
    }

    private static byte[] read(File file) throws IOException {
        try (InputStream bytes = file.bytes().open()) {
            return bytes.readAllBytes();
        }
    }

    /// The path below the folder that was sent, without steps upwards.
    private static String inside(String path) {
        String plain = plain(path);
        int first = plain.indexOf('/');
        return first < 0 ? plain : plain.substring(first + 1);
    }

    /// The folder's own name, as the id of a day.
    public static String folder(String path) {
        String plain = path.replace('\\', '/').replaceAll("^/+", "");
        int first = plain.indexOf('/');
        String name = first < 0 ? "" : plain.substring(0, first);
        return name.replaceAll("[^\\p{L}\\p{N}._-]+", "-").replaceAll("^[.]+", "");
    }

    /// The last piece of a path, without signs that no file name of ours may hold.
    static String name(String path) {
        String plain = path.replace('\\', '/');
        String last = plain.substring(plain.lastIndexOf('/') + 1);
        String safe = last.replaceAll("[\\p{Cntrl}:*?\"<>|]", "_").strip();
        return safe.startsWith(".") ? "_" + safe.substring(1) : safe;
    }

    private static String free(String name, String sha256, TreeMap<String, String> hashes) {
        String wanted = name;
        int dot = name.lastIndexOf('.');
        String stem = dot > 0 ? name.substring(0, dot) : name;
        String end = dot > 0 ? name.substring(dot) : "";
        for (int i = 2; isTakenByOther(wanted, sha256, hashes); i++) {
            wanted = stem + "-" + i + end;
        }
        return wanted;
    }

    private static boolean isTakenByOther(String name, String sha256, TreeMap<String, String> hashes) {
        String there = hashes.get(RECORDINGS + name);
        return there != null && !there.equals(sha256);
    }
}
