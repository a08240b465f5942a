package org.measuredmile.archive.json;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.SpecLine;
import tools.jackson.databind.JsonNode;

/// A bike as its folder describes it, to JSON and back without loss.
///
/// Shape: the keys of bike.yaml, and `spec` with one object a line of spec.csv; what was not written is left out.
public final class BikeJson {
    private BikeJson() {}

    public static JsonNode write(Bike bike) {
        var object = Json.object().put("id", bike.id());
        put(object, "maker", bike.maker());
        put(object, "model", bike.model());
        bike.modelYear().ifPresent(year -> object.put("modelYear", year));
        put(object, "category", bike.category());
        put(object, "drive", bike.drive());
        put(object, "sensor", bike.sensor());
        bike.levels().ifPresent(levels -> object.put("levels", levels));
        put(object, "wheelSize", bike.wheelSize());
        var price = Json.object();
        bike.price().amount().ifPresent(amount -> price.put("amount", amount));
        put(price, "currency", bike.price().currency());
        put(price, "market", bike.price().market());
        put(price, "date", bike.price().date());
        object.set("price", price);
        put(object, "acquired", bike.loan().acquired());
        put(object, "from", bike.loan().from());
        put(object, "received", bike.loan().received());
        put(object, "dueBack", bike.loan().dueBack());
        put(object, "disclosure", bike.loan().disclosure());
        object.set("spec", Json.array(bike.spec(), BikeJson::line));
        return object;
    }

    private static JsonNode line(SpecLine line) {
        var object = Json.object().put("item", line.item());
        put(object, "claimed", line.claimed());
        put(object, "unit", line.unit());
        put(object, "conditions", line.conditions());
        put(object, "source", line.source());
        put(object, "date", line.date());
        put(object, "seen", line.seen());
        put(object, "photo", line.photo());
        put(object, "note", line.note());
        put(object, "file", line.place().source());
        put(object, "where", line.place().where());
        return object;
    }

    private static void put(tools.jackson.databind.node.ObjectNode object, String key, String value) {
        if (!value.isEmpty()) {
            object.put(key, value);
        }
    }

    public static Bike read(JsonNode json) {
        var price = json.path("price");
        return new Bike(
                text(json, "id"),
                text(json, "maker"),
                text(json, "model"),
                whole(json, "modelYear"),
                text(json, "category"),
                text(json, "drive"),
                text(json, "sensor"),
                whole(json, "levels"),
                text(json, "wheelSize"),
                new Bike.Price(
                        price.path("amount").isNumber()
                                ? OptionalDouble.of(price.path("amount").asDouble())
                                : OptionalDouble.empty(),
                        text(price, "currency"),
                        text(price, "market"),
                        text(price, "date")),
                new Bike.Loan(
                        text(json, "acquired"),
                        text(json, "from"),
                        text(json, "received"),
                        text(json, "dueBack"),
                        text(json, "disclosure")),
                lines(json.path("spec")));
    }

    private static List<SpecLine> lines(JsonNode spec) {
        return spec.valueStream()
                .map(line -> new SpecLine(
                        text(line, "item"),
                        text(line, "claimed"),
                        text(line, "unit"),
                        text(line, "conditions"),
                        text(line, "source"),
                        text(line, "date"),
                        text(line, "seen"),
                        text(line, "photo"),
                        text(line, "note"),
                        new Place(text(line, "file"), text(line, "where"))))
                .toList();
    }

    private static OptionalInt whole(JsonNode json, String key) {
        return json.path(key).isInt() ? OptionalInt.of(json.path(key).asInt()) : OptionalInt.empty();
    }

    private static String text(JsonNode json, String key) {
        return json.path(key).asString("");
    }
}
