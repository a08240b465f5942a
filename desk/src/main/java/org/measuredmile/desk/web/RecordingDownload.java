package org.measuredmile.desk.web;

import java.io.IOException;
import java.util.regex.Pattern;
import org.springframework.core.io.InputStreamResource;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/// The bytes of a kept file, by their hash, exactly as they came.
@Controller
class RecordingDownload {
    private static final Pattern SHA_256 = Pattern.compile("[0-9a-f]{64}");

    private final Desk desk;

    RecordingDownload(Desk desk) {
        this.desk = desk;
    }

    @GetMapping("/recordings/{sha256}")
    ResponseEntity<InputStreamResource> bytes(
            @PathVariable String sha256, @RequestParam(defaultValue = "recording") String name) throws IOException {
        if (!SHA_256.matcher(sha256).matches()
                || desk.archive().content().fault(sha256).isPresent()) {
            throw new NotThere("No file with this hash is kept here.", "/days", "To the test days");
        }
        // Always handed over as a file: whatever an instrument wrote is never shown as a page of ours.
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_OCTET_STREAM)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment()
                                .filename(name, java.nio.charset.StandardCharsets.UTF_8)
                                .build()
                                .toString())
                .body(new InputStreamResource(desk.archive().content().open(sha256)));
    }
}
