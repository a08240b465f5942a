package org.measuredmile.recording.day;

import java.util.Optional;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.CollectionNode;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/// Writes the pre-ride check into the text of day.yaml and leaves everything else, comments too, as it is.
final class YamlEdit {
    private final String text;

    private YamlEdit(String text) {
        this.text = text;
    }

    static Optional<String> withCheck(String text, PreRideCheck check) {
        try {
            Optional<Node> root = new Compose(YamlText.settings()).composeString(text);
            return root.filter(MappingNode.class::isInstance)
                    .map(node -> new YamlEdit(text).put((MappingNode) node, check));
        } catch (YamlEngineException _) {
            return Optional.empty();
        }
    }

    private String put(MappingNode root, PreRideCheck check) {
        String value = "{by: " + quoted(check.by()) + ", secondPerson: " + quoted(check.secondPerson()) + ", time: "
                + quoted(check.time()) + "}";
        Optional<Node> checks = value(root, "checks");
        if (checks.isEmpty()) {
            return added(root, "checks: {preRide: " + value + "}");
        }
        if (!(checks.get() instanceof MappingNode inner)) {
            return replaced(checks.get(), "{preRide: " + value + "}");
        }
        Optional<Node> known = value(inner, "preRide");
        return known.isPresent() ? replaced(known.get(), value) : added(inner, "preRide: " + value);
    }

    private static Optional<Node> value(MappingNode mapping, String key) {
        return mapping.getValue().stream()
                .filter(tuple -> tuple.getKeyNode() instanceof ScalarNode scalar
                        && scalar.getValue().equals(key))
                .map(NodeTuple::getValueNode)
                .findFirst();
    }

    /// One more key at the end of a mapping, in the mapping's own manner.
    private String added(MappingNode mapping, String entry) {
        int end = end(mapping);
        if (mapping.getFlowStyle() == FlowStyle.FLOW) {
            String comma = mapping.getValue().isEmpty() ? "" : ", ";
            return text.substring(0, end - 1) + comma + entry + text.substring(end - 1);
        }
        int indent = mapping.getStartMark().map(Mark::getColumn).orElse(0);
        int line = text.indexOf('\n', Math.max(0, end - 1));
        String lineEnd = text.contains("\r\n") ? "\r\n" : "\n";
        String added = " ".repeat(indent) + entry + lineEnd;
        return line < 0 ? text + lineEnd + added : text.substring(0, line + 1) + added + text.substring(line + 1);
    }

    private String replaced(Node value, String words) {
        int from = offset(value.getStartMark());
        int end = end(value);
        // Nothing is written after the colon: a blank must part it from what comes.
        String blank = from == end ? " " : "";
        return text.substring(0, from) + blank + words + text.substring(end);
    }

    /// Where a node's own text ends; what the library calls the end of a block lies at the next key.
    private int end(Node node) {
        boolean isBlock = node instanceof CollectionNode<?> collection && collection.getFlowStyle() != FlowStyle.FLOW;
        if (!isBlock) {
            return offset(node.getEndMark());
        }
        return switch (node) {
            case MappingNode mapping
            when !mapping.getValue().isEmpty() ->
                end(mapping.getValue().getLast().getValueNode());
            case SequenceNode sequence
            when !sequence.getValue().isEmpty() -> end(sequence.getValue().getLast());
            default -> offset(node.getEndMark());
        };
    }

    private int offset(Optional<Mark> mark) {
        return text.offsetByCodePoints(0, mark.map(Mark::getIndex).orElse(0));
    }

    private static String quoted(String words) {
        return '"' + words.replace("\\", "\\\\").replace("\"", "\\\"").replaceAll("\\p{Cntrl}", " ") + '"';
    }
}
