package org.measuredmile.archive.json;

import java.util.Locale;
import java.util.OptionalDouble;
import org.measuredmile.recording.Inspection;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.reader.Decoding;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;

/// What is in a recording, as `mile inspect --json` gives it.
///
/// Unit: metres and seconds; times in gaps, runs and marks from the recording's start.
public final class InspectJson {
    private InspectJson() {}

    public static JsonNode write(Inspection found) {
        var object = Json.object()
                .put("file", found.file())
                .put("format", found.format())
                .put("device", found.device());
        object.set(
                "startTime",
                found.startTime()
                        .<JsonNode>map(start -> JsonNodeFactory.instance.stringNode(start.toString()))
                        .orElseGet(JsonNodeFactory.instance::nullNode));
        object.put("zoneStated", found.zoneStated()).put("samples", found.samples());
        object.set("clockSeconds", Json.number(found.clockSeconds()));
        object.set("ridingSeconds", number(found.ridingSeconds()));
        object.set("distanceMetres", number(found.distanceMetres()));
        object.set("trackDistanceMetres", number(found.trackDistanceMetres()));
        object.set("ascentMetres", number(found.ascentMetres()));
        object.set("channels", Json.array(found.channels(), InspectJson::channel));
        object.set("gaps", Json.array(found.gaps(), gap -> stretch(gap.fromS(), gap.toS())));
        object.set("runs", Json.array(found.runs(), InspectJson::run));
        object.set("findings", FindingJson.write(found.findings()));
        object.set("marks", Json.array(found.marks(), InspectJson::mark));
        return object;
    }

    private static JsonNode mark(Mark mark) {
        var object = Json.object().put("kind", mark.kind().name().toLowerCase(Locale.ROOT));
        object.setAll(stretch(mark.fromS(), mark.toS()));
        return object.put("text", mark.text());
    }

    /// A file that could not be read: its name and why, and nothing where there is nothing.
    public static JsonNode write(Decoding.Refused refused) {
        var object = Json.object().put("file", refused.name());
        for (String key : new String[] {"format", "device", "startTime", "zoneStated"}) {
            object.putNull(key);
        }
        object.put("samples", 0);
        for (String key :
                new String[] {"clockSeconds", "ridingSeconds", "distanceMetres", "trackDistanceMetres", "ascentMetres"
                }) {
            object.putNull(key);
        }
        for (String key : new String[] {"channels", "gaps", "runs"}) {
            object.set(key, Json.array());
        }
        object.set("findings", FindingJson.write(refused.findings()));
        object.set("marks", Json.array());
        return object;
    }

    private static JsonNode number(OptionalDouble value) {
        return Json.number(value.orElse(Double.NaN));
    }

    private static JsonNode channel(Inspection.ChannelSummary channel) {
        var object = Json.object()
                .put("name", channel.name())
                .put("kind", channel.kind())
                .put("unit", channel.unit())
                .put("samples", channel.samples());
        object.set("ratePerSecond", Json.number(channel.ratePerSecond()));
        return object;
    }

    private static tools.jackson.databind.node.ObjectNode stretch(double fromS, double toS) {
        var object = Json.object();
        object.set("from", Json.number(fromS));
        object.set("to", Json.number(toS));
        return object;
    }

    private static JsonNode run(Inspection.ProposedRun run) {
        var object = Json.object().put("trial", run.trial()).put("variant", run.variant());
        object.setAll(stretch(run.fromS(), run.toS()));
        return object.put("why", run.why());
    }
}
