package org.measuredmile.desk.web;

import java.io.IOException;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;

/// Takes in the files of a large drop one by one, so that each shows how far it is and one that fails costs no other.
///
/// Shape: the answer is the content's hash. The day names it with the form that follows; until then the file waits,
/// and one that is never named is removed, see [org.measuredmile.archive.WaitingFiles].
@Controller
class StagedUploads {
    private final Desk desk;

    StagedUploads(Desk desk) {
        this.desk = desk;
    }

    @PostMapping("/uploads")
    ResponseEntity<String> take(@RequestParam("file") MultipartFile file) throws IOException {
        try (var bytes = file.getInputStream()) {
            var kept = desk.archive().waiting().put(bytes);
            return ResponseEntity.ok()
                    .contentType(MediaType.TEXT_PLAIN)
                    .cacheControl(CacheControl.noStore())
                    .body(kept.sha256());
        }
    }
}
