package org.measuredmile.comparison.legal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/// docs/legal-classes.md is what the data say. With `-Dhandbook.write=true` it is written anew.
class LegalPageTest {
    @Test
    void thePageInTheDocsIsWhatTheDataSay() throws IOException {
        var file = Path.of("..", "docs", "legal-classes.md");
        String page = LegalPage.of(LegalRules.ALL);
        if (Boolean.getBoolean("handbook.write")) {
            Files.writeString(file, page);
        }
        assertThat(file)
                .as("write it with -Dhandbook.write=true")
                .exists()
                .content()
                .isEqualTo(page);
    }
}
