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
import org.measuredmile.archive.ContentStore;
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
    /// Shape: `staged` holds a line for each of the latter: hash, space, path; a line that is none, or names a
    /// content that is not kept, is no file.
    static List<Upload.File> of(List<MultipartFile> parts, String staged, ContentStore content) throws IOException {
        var files = of(parts);
        for (String line : staged.lines().toList()) {
            Matcher named = STAGED.matcher(line.strip());
            if (named.matches() && content.fault(named.group(1)).isEmpty()) {
                String sha256 = named.group(1);
                files.add(new Upload.File(named.group(2), () -> content.open(sha256), sha256));
            }
        }
        return files;
    }

    /// What is wrong with so many files; empty when nothing is.
    static String fault(List<Upload.File> files) {
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
