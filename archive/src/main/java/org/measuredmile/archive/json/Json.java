package org.measuredmile.archive.json;

import java.util.Collection;
import java.util.function.Function;
import tools.jackson.core.json.JsonWriteFeature;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/// Reading and writing JSON text.
///
/// Shape: keys in the order they were put; a number that is not finite becomes null, since JSON has no word for it.
public final class Json {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .disable(JsonWriteFeature.ESCAPE_FORWARD_SLASHES)
            .build();
    private static final DefaultIndenter TWO_SPACES = new DefaultIndenter("  ", "\n");

    private Json() {}

    public static ObjectNode object() {
        return JsonNodeFactory.instance.objectNode();
    }

    public static ArrayNode array() {
        return JsonNodeFactory.instance.arrayNode();
    }

    /// An array of what each item becomes, in their order.
    public static <T> ArrayNode array(Collection<T> items, Function<T, JsonNode> each) {
        var all = array();
        items.forEach(item -> all.add(each.apply(item)));
        return all;
    }

    public static ArrayNode texts(Collection<String> texts) {
        var all = array();
        texts.forEach(all::add);
        return all;
    }

    /// A number with every digit; null when it is not finite.
    public static JsonNode number(double value) {
        return Double.isFinite(value)
                ? JsonNodeFactory.instance.numberNode(value)
                : JsonNodeFactory.instance.nullNode();
    }

    /// On one line, for storing.
    public static String compact(JsonNode node) {
        return MAPPER.writeValueAsString(node);
    }

    /// Indented by two spaces, lines ended by a line feed on every system, for people and files.
    public static String pretty(JsonNode node) {
        var printer = new DefaultPrettyPrinter().withObjectIndenter(TWO_SPACES).withArrayIndenter(TWO_SPACES);
        return MAPPER.writer().with(printer).writeValueAsString(node) + "\n";
    }

    public static JsonNode parse(String text) {
        return MAPPER.readTree(text);
    }
}
