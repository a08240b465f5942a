package org.measuredmile.desk.web;

import java.io.IOException;
import java.io.InputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.measuredmile.archive.Archive;
import org.measuredmile.desk.web.edit.Upload;
import org.springframework.web.multipart.MultipartFile;

/// What a browser sent as files, each with its hash; an input that was left empty is no file.
final class Uploads {
    /// So many files are taken in at once.
    static final int MOST_FILES = 2_000;

    private static final Pattern STAGED = Pattern.compile("([0-9a-f]{64}) (.{1,1000})");

    private Uploads() {}

    /// The files that came with the form, and those that came before it one by one.
    ///
    /// Shape: `staged` holds a line for each of the latter: hash, space, path; a line that is none is no file.
    static Sent of(List<MultipartFile> parts, String staged, Archive archive) throws IOException {
        var files = of(parts);
        var waited = new ArrayList<String>();
        var gone = new ArrayList<String>();
        for (String line : staged.lines().toList()) {
            Matcher named = STAGED.matcher(line.strip());
            if (!named.matches()) {
                continue;
            }
            String sha256 = named.group(1);
            String path = named.group(2);
            if (archive.waiting().holds(sha256)) {
                files.add(new Upload.File(path, () -> waiting(archive, sha256), sha256));
                waited.add(sha256);
            } else if (archive.content().fault(sha256).isEmpty()) {
                files.add(new Upload.File(path, () -> archive.content().open(sha256), sha256));
            } else {
                gone.add(path);
            }
        }
        return new Sent(files, waited, gone);
    }

    /// Another form may have taken the same file over meanwhile; then the archive has it.
    private static InputStream waiting(Archive archive, String sha256) throws IOException {
        var bytes = archive.waiting().open(sha256);
        return bytes.isPresent() ? bytes.get() : archive.content().open(sha256);
    }

    /// What a form brought: its files, the hashes of those that waited for it, the paths of those that are gone.
    record Sent(List<Upload.File> files, List<String> waited, List<String> gone) {
        /// What is wrong with it; empty when nothing is.
        String fault() {
            return gone.isEmpty()
                    ? Uploads.fault(files)
                    : "“" + gone.getFirst() + "”" + (gone.size() > 1 ? " and " + (gone.size() - 1) + " more" : "")
                            + " was sent too long ago and is not here any more; send it again.";
        }
    }

    /// What is wrong with so many files; empty when nothing is.
    private static String fault(List<Upload.File> files) {
        return files.size() <= MOST_FILES
                ? ""
                : String.format(
                        Locale.UK,
                        "%,d files are more than the %,d that are taken in at once; send them in parts.",
                        files.size(),
                        MOST_FILES);
    }

    static List<Upload.File> of(List<MultipartFile> parts) throws IOException {
        var files = new ArrayList<Upload.File>();
        for (MultipartFile part : parts) {
            String path = part.getOriginalFilename();
            if (path != null && !path.isBlank()) {
                files.add(new Upload.File(path, part::getInputStream, hash(part)));
            }
        }
        return files;
    }

    private static String hash(MultipartFile part) throws IOException {
        try (InputStream bytes = part.getInputStream()) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] buffer = new byte[1 << 16];
            for (int read = bytes.read(buffer); read >= 0; read = bytes.read(buffer)) {
                digest.update(buffer, 0, read);
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java has SHA-256", missing);
        }
    }
}
