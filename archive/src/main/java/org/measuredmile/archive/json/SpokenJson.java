package org.measuredmile.archive.json;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.spoken.CameraOffset;
import org.measuredmile.recording.spoken.SpokenAgainstTrace;
import org.measuredmile.recording.spoken.SpokenClip;
import org.measuredmile.recording.spoken.SpokenReading;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/// The numbers said in a clip and its clock against each recording, as `mile inspect --json` gives them.
///
/// Unit: seconds; `at` on the clip's own clock, `recordingTime` on the recording's; values in the SI unit named beside
/// them.
public final class SpokenJson {
    private SpokenJson() {}

    /// Adds the two keys of a captions file to what an inspection says of it.
    public static void write(SpokenClip clip, ObjectNode to) {
        to.set("spoken", Json.array(clip.readings(), SpokenJson::reading));
        to.set("cameraOffsets", Json.array(clip.beside(), SpokenJson::beside));
    }

    private static JsonNode reading(SpokenReading said) {
        var object = Json.object();
        object.set("at", Json.number(said.timeS()));
        object.put("words", said.text()).put("written", said.written());
        if (said.kind().isPresent()) {
            object.put("quantity", word(said.kind().get()));
        } else {
            object.putNull("quantity");
        }
        object.set("value", Json.number(said.value()));
        if (said.kind().isPresent()) {
            object.put("unit", said.kind().get().si().symbol());
            object.put("unitSaid", said.unit().map(Unit::symbol).orElse(""));
        } else {
            object.putNull("unit").putNull("unitSaid");
        }
        return object.put("confidence", said.confidence().words());
    }

    private static String word(QuantityKind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static JsonNode beside(SpokenClip.Beside beside) {
        var object = Json.object()
                .put("recording", beside.recording())
                .put("speed", beside.speed().kind().title());
        switch (beside.offset()) {
            case CameraOffset.Found found -> {
                object.set("offset", Json.number(found.offsetS()));
                object.set("standardUncertainty", Json.number(found.standardUncertaintyS()));
                object.set(
                        "interval95",
                        Json.array(
                                List.of(
                                        found.interval95S().low(),
                                        found.interval95S().high()),
                                Json::number));
                object.put("agreeing", found.agreeing()).put("said", found.said());
                object.putNull("why");
            }
            case CameraOffset.NotFound(String code, String message, String remedy, List<Double> offsetsS) -> {
                for (String key : new String[] {"offset", "standardUncertainty", "interval95", "agreeing", "said"}) {
                    object.putNull(key);
                }
                var why =
                        Json.object().put("code", code).put("message", message).put("remedy", remedy);
                why.set("offsets", Json.array(offsetsS, Json::number));
                object.set("why", why);
            }
        }
        object.set("compared", Json.array(beside.compared(), SpokenJson::compared));
        return object;
    }

    private static JsonNode compared(SpokenAgainstTrace one) {
        var object = Json.object();
        object.set("at", Json.number(one.reading().timeS()));
        object.set("recordingTime", Json.number(one.traceTimeS()));
        object.set("trace", number(one.traceMps()));
        object.set("difference", number(one.differenceMps()));
        return object.put("agreement", one.agreement().words().replace(' ', '-'));
    }

    private static JsonNode number(OptionalDouble value) {
        return Json.number(value.orElse(Double.NaN));
    }
}
