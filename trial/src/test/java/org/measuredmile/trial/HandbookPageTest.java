package org.measuredmile.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/// The pages in docs/handbook are what the declarations say. With `-Dhandbook.write=true` they are written anew.
class HandbookPageTest {
    static List<Trial> trials() {
        return Trials.ALL;
    }

    @ParameterizedTest
    @MethodSource("trials")
    void thePageInTheDocsIsWhatTheTrialDeclares(Trial trial) throws IOException {
        var declaration = trial.declaration();
        var file = Path.of("..", "docs", "handbook", declaration.id() + ".md");
        String page = HandbookPage.of(declaration);
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
