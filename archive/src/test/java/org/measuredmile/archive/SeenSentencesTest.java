package org.measuredmile.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/// Sentences as they were seen: the latest counts, the earlier ones stay.
class SeenSentencesTest {
    private static final Instant NOW = Instant.parse("2031-05-05T08:00:00Z");

    @TempDir
    private Path folder = Path.of("");

    private Archive open() {
        return Archive.open(folder, Clock.fixed(NOW, ZoneOffset.UTC));
    }

    private static SeenSentence sentence(String id, String bike, String words, boolean said) {
        return SeenSentence.now(
                id,
                bike,
                said,
                "hash of " + words,
                new SeenSentence.Texts(words, words, words, words),
                new SeenSentence.Basis("weighin 1", "27.5", ""));
    }

    @Test
    void theLatestOfEachIdCountsAndNothingIsOverwritten() throws SQLException {
        try (var archive = open()) {
            archive.seeSentences(
                    List.of(sentence("a", "one", "first", true), sentence("b", "two", "other", true)),
                    new Act("E1", "seen"));
            archive.seeSentences(List.of(sentence("a", "one", "second", true)), new Act("E2", "seen"));

            assertThat(archive.seenSentences("one")).singleElement().satisfies(one -> {
                assertThat(one.texts().writtenMetric()).isEqualTo("second");
                assertThat(one.who()).isEqualTo("E2");
                assertThat(one.since()).isEqualTo(NOW);
            });
            assertThat(archive.seenSentences("")).hasSize(2);
        }
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("archive.db"));
                var work = connection.createStatement()) {
            assertThatThrownBy(() -> work.executeUpdate("update sentence set hash = ''"))
                    .hasMessageContaining("never changed");
            assertThatThrownBy(() -> work.executeUpdate("delete from sentence")).hasMessageContaining("never deleted");
            try (var rows = work.executeQuery("select count(*) from sentence")) {
                assertThat(rows.next()).isTrue();
                assertThat(rows.getInt(1)).isEqualTo(3);
            }
        }
    }
}
