package org.measuredmile.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/// Files that wait to be named by a day.
class WaitingFilesTest {
    private static final Instant NOON = Instant.parse("2031-06-30T12:00:00Z");

    @TempDir
    private Path folder;

    @Test
    void what_was_sent_waits_and_can_be_read() throws IOException {
        var waiting = at(NOON);
        var kept = waiting.put(bytes("a ride"));
        assertThat(waiting.holds(kept.sha256())).isTrue();
        try (var in = waiting.open(kept.sha256()).orElseThrow()) {
            assertThat(in).hasContent("a ride");
        }
        assertThat(waiting.open("0".repeat(64))).isEmpty();
    }

    @Test
    void what_nothing_named_for_a_day_is_removed_and_what_is_younger_stays() throws IOException {
        var old = at(NOON).put(bytes("old"));
        var young = at(NOON.plus(Duration.ofHours(2))).put(bytes("young"));
        var later = at(NOON.plus(WaitingFiles.LONGEST).plusSeconds(1));
        assertThat(later.holds(old.sha256())).isFalse();
        assertThat(later.holds(young.sha256())).isTrue();
    }

    @Test
    void sent_again_it_waits_anew() throws IOException {
        at(NOON).put(bytes("ride"));
        var again = at(NOON.plus(Duration.ofHours(20))).put(bytes("ride"));
        assertThat(at(NOON.plus(Duration.ofHours(30))).holds(again.sha256())).isTrue();
    }

    @Test
    void what_was_taken_over_is_gone() throws IOException {
        var waiting = at(NOON);
        var kept = waiting.put(bytes("ride"));
        waiting.taken(List.of(kept.sha256()));
        waiting.taken(List.of(kept.sha256()));
        assertThat(waiting.holds(kept.sha256())).isFalse();
    }

    private WaitingFiles at(Instant now) throws IOException {
        return new WaitingFiles(folder, Clock.fixed(now, ZoneOffset.UTC));
    }

    private static ByteArrayInputStream bytes(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }
}
