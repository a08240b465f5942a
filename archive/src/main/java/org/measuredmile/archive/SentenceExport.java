package org.measuredmile.archive;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import org.measuredmile.archive.json.Json;
import tools.jackson.databind.JsonNode;

/// The seen sentences of an archive as one file of its export, and back.
final class SentenceExport {
    static final String FILE = "sentences.json";

    private SentenceExport() {}

    static void write(SeenSentences sentences, Path export) throws IOException {
        var all = sentences.all();
        if (!all.isEmpty()) {
            Files.writeString(
                    export.resolve(FILE), Json.pretty(Json.array(all, SentenceExport::entry)), StandardCharsets.UTF_8);
        }
    }

    private static JsonNode entry(SeenSentence one) {
        var object = Json.object()
                .put("id", one.id())
                .put("at", Database.text(one.since()))
                .put("who", one.who())
                .put("bike", one.bike())
                .put("said", one.said())
                .put("hash", one.hash())
                .put("writtenMetric", one.texts().writtenMetric())
                .put("writtenImperial", one.texts().writtenImperial())
                .put("spokenMetric", one.texts().spokenMetric())
                .put("spokenImperial", one.texts().spokenImperial())
                .put("method", one.basis().method())
                .put("figure", one.basis().figure());
        return object.put("population", one.basis().population());
    }

    /// Adds what the export holds and this archive does not, as it was seen then.
    static void bringIn(SeenSentences sentences, Path export) throws IOException {
        var file = export.resolve(FILE);
        if (!Files.isRegularFile(file)) {
            return;
        }
        var known = new HashSet<String>();
        sentences.all().forEach(one -> known.add(one.id() + " " + one.since()));
        for (var node : Json.parse(Files.readString(file, StandardCharsets.UTF_8))) {
            var at = Instant.parse(node.path("at").asString());
            if (!known.contains(node.path("id").asString() + " " + at)) {
                sentences.add(List.of(read(node)), at, node.path("who").asString());
            }
        }
    }

    private static SeenSentence read(JsonNode node) {
        return SeenSentence.now(
                node.path("id").asString(),
                node.path("bike").asString(),
                node.path("said").asBoolean(),
                node.path("hash").asString(),
                new SeenSentence.Texts(
                        node.path("writtenMetric").asString(),
                        node.path("writtenImperial").asString(),
                        node.path("spokenMetric").asString(),
                        node.path("spokenImperial").asString()),
                new SeenSentence.Basis(
                        node.path("method").asString(),
                        node.path("figure").asString(),
                        node.path("population").asString()));
    }
}
