package org.measuredmile.desk.web;

import java.io.IOException;
import java.io.InputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.measuredmile.desk.web.edit.Upload;
import org.springframework.web.multipart.MultipartFile;

/// What a browser sent as files, each with its hash; an input that was left empty is no file.
final class Uploads {
    private Uploads() {}

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
