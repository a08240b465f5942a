package org.measuredmile.recording.day;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.measuredmile.quantity.QuantityKind;
import org.snakeyaml.engine.v2.api.Dump;
import org.snakeyaml.engine.v2.api.DumpSettings;
import org.snakeyaml.engine.v2.api.StreamDataWriter;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/// Keys and values to be written as YAML, in the order they are put; what is absent is not written.
final class YamlKeys {
    private final List<NodeTuple> tuples = new ArrayList<>();

    boolean isEmpty() {
        return tuples.isEmpty();
    }

    YamlKeys text(String key, String value) {
        return value.isEmpty() ? this : put(key, scalar(value));
    }

    YamlKeys quantity(String key, OptionalDouble si, QuantityKind kind) {
        return si.isEmpty() ? this : text(key, ExactText.quantity(si.getAsDouble(), kind));
    }

    YamlKeys number(String key, OptionalDouble value) {
        return value.isEmpty() ? this : put(key, number(ExactText.number(value.getAsDouble())));
    }

    YamlKeys wholeNumber(String key, OptionalInt value) {
        return value.isEmpty() ? this : put(key, number(Integer.toString(value.getAsInt())));
    }

    YamlKeys value(String key, Optional<?> value) {
        return value.isEmpty() ? this : text(key, value.get().toString());
    }

    YamlKeys keys(String key, YamlKeys inner) {
        return inner.isEmpty() ? this : put(key, inner.node());
    }

    YamlKeys words(String key, List<String> words) {
        return list(key, words.stream().map(YamlKeys::scalar).toList());
    }

    YamlKeys mappings(String key, List<YamlKeys> entries) {
        return list(key, entries.stream().map(YamlKeys::node).toList());
    }

    private YamlKeys list(String key, List<Node> nodes) {
        return nodes.isEmpty() ? this : put(key, new SequenceNode(Tag.SEQ, nodes, FlowStyle.BLOCK));
    }

    private YamlKeys put(String key, Node value) {
        tuples.add(new NodeTuple(scalar(key), value));
        return this;
    }

    private Node node() {
        return new MappingNode(Tag.MAP, tuples, FlowStyle.BLOCK);
    }

    /// Text as it is where YAML allows it, in quotation marks where that would change it.
    private static Node scalar(String text) {
        boolean isPlain = text.codePoints().allMatch(sign -> sign >= ' ' && sign != 0x7F && sign < 0x80)
                || text.codePoints().allMatch(sign -> Character.isLetterOrDigit(sign) || " %°²³./-".indexOf(sign) >= 0);
        return new ScalarNode(Tag.STR, text, isPlain ? ScalarStyle.PLAIN : ScalarStyle.DOUBLE_QUOTED);
    }

    private static Node number(String digits) {
        return new ScalarNode(digits.contains(".") ? Tag.FLOAT : Tag.INT, digits, ScalarStyle.PLAIN);
    }

    /// The file: its first line, then the keys.
    String file(String kind) {
        var text = new StringBuilder(FileText.firstLine(kind));
        var settings = DumpSettings.builder()
                .setWidth(Integer.MAX_VALUE)
                .setSplitLines(false)
                .setUseUnicodeEncoding(true)
                .build();
        new Dump(settings).dumpNode(node(), new StreamDataWriter() {
            @Override
            public void write(String part) {
                text.append(part);
            }

            @Override
            public void write(String part, int offset, int length) {
                text.append(part, offset, offset + length);
            }
        });
        return text.toString();
    }
}
