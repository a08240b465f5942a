package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/// The pages on formats name every finding that counts samples.
class FormatPagesTest {
    static String pages() throws IOException {
        try (Stream<Path> files = Files.list(folder())) {
            return files.sorted().map(FormatPagesTest::text).collect(Collectors.joining("\n"));
        }
    }

    private static Path folder() {
        for (Path at = Path.of("").toAbsolutePath(); at != null; at = at.getParent()) {
            Path pages = at.resolve("docs").resolve("formats");
            if (Files.isDirectory(pages)) {
                return pages;
            }
        }
        throw new AssertionError("no folder docs/formats above the working directory");
    }

    private static String text(Path page) {
        try {
            return Files.readString(page, StandardCharsets.UTF_8);
        } catch (IOException broken) {
            throw new java.io.UncheckedIOException(broken);
        }
    }

    @ParameterizedTest
    @EnumSource(Remark.class)
    void everyCodeHasItsRow(Remark remark) throws IOException {
        assertThat(pages()).contains("| " + remark.code() + " |");
    }
}
