package org.measuredmile.desk.cli;

import org.measuredmile.archive.json.FigureJson;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.shortlist.Answer;
import org.measuredmile.comparison.shortlist.Answer.Basis;
import org.measuredmile.comparison.shortlist.Answer.Reply;
import org.measuredmile.comparison.shortlist.Shortlist;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/// A reader's shortlist, as `mile shortlist --json` gives it.
///
/// Unit: values and intervals in the SI unit named by `unit`; intervals are any-day ones.
final class ShortlistJson {
    private ShortlistJson() {}

    static JsonNode write(Shortlist shortlist) {
        var object = Json.object().put("wishes", shortlist.wishes().expression());
        object.set("conditions", Json.texts(shortlist.conditions()));
        object.set("bikes", Json.array(shortlist.answers(), ShortlistJson::answer));
        return object;
    }

    private static JsonNode answer(Answer answer) {
        var object = Json.object()
                .put("bike", answer.bike().bike().id())
                .put("title", answer.bike().bike().title())
                .put("answer", answer.verdict().word());
        object.set("wishes", Json.array(answer.replies(), ShortlistJson::reply));
        return object;
    }

    private static JsonNode reply(Reply reply) {
        var object = Json.object()
                .put("wish", reply.wish().text())
                .put("answer", reply.verdict().word());
        object.set("probability", Json.number(reply.probability().orElse(Double.NaN)));
        switch (reply.basis()) {
            case Basis.Measured measured -> {
                object.set("value", Json.number(measured.si()));
                object.put("unit", measured.kind().si().symbol());
                object.set("interval95", FigureJson.interval(measured.interval95()));
                object.put("words", measured.words());
            }
            case Basis.Stated(String words) -> bare(object, words);
            case Basis.Missing(String why) -> bare(object, why);
        }
        return object;
    }

    private static void bare(ObjectNode object, String words) {
        for (String key : new String[] {"value", "unit", "interval95"}) {
            object.set(key, JsonNodeFactory.instance.nullNode());
        }
        object.put("words", words);
    }
}
