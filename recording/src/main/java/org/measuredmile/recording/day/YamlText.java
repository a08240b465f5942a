package org.measuredmile.recording.day;

import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Place;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/// A YAML file of keys and values, taken as text with places: no type is guessed and no object is built.
final class YamlText {
    private static final int DEEPEST = 12;

    private YamlText() {}

    /// The keys and values of a text, or nothing when it holds none; what is wrong goes to the faults.
    static Optional<YamlFields> read(FileText text, Faults faults) {
        try {
            if (isRefused(text, faults)) {
                return Optional.empty();
            }
            Optional<Node> root = new Compose(settings()).composeString(text.text());
            if (root.isPresent() && root.get() instanceof MappingNode mapping) {
                return Optional.of(fields(text.file(), "", mapping, faults));
            }
            faults.add(
                    root.isEmpty() ? DayFault.FILE_EMPTY : DayFault.NOT_A_MAPPING,
                    root.isEmpty() ? Place.in(text.file()) : Place.atLine(text.file(), line(root.get())));
        } catch (MarkedYamlEngineException broken) {
            long line = broken.getProblemMark().map(mark -> mark.getLine() + 1L).orElse(1L);
            faults.add(DayFault.NOT_YAML, Place.atLine(text.file(), line), words(broken.getProblem()));
        } catch (YamlEngineException broken) {
            faults.add(DayFault.NOT_YAML, Place.in(text.file()), words(broken.getMessage()));
        }
        return Optional.empty();
    }

    /// The first line of what the library says, without what it adds in brackets.
    private static String words(@org.jspecify.annotations.Nullable String problem) {
        String text = problem == null ? "it cannot be read" : problem;
        return text.lines()
                .findFirst()
                .orElse("")
                .replaceAll("\\s*\\([^)]*[iI]ndentation\\)", "")
                .strip();
    }

    static LoadSettings settings() {
        return LoadSettings.builder()
                .setUseMarks(true)
                .setCodePointLimit(FileText.LARGEST_BYTES)
                .build();
    }

    /// Looks at the events first, since composing recurses: nested too deeply, or with aliases, a text is left
    /// alone.
    private static boolean isRefused(FileText text, Faults faults) {
        int depth = 0;
        for (Event event : new Parse(settings()).parseString(text.text())) {
            long line = event.getStartMark().map(mark -> mark.getLine() + 1L).orElse(1L);
            Place place = Place.atLine(text.file(), line);
            switch (event.getEventId()) {
                case MappingStart, SequenceStart -> depth++;
                case MappingEnd, SequenceEnd -> depth--;
                case Alias -> {
                    faults.add(DayFault.YAML_ALIASES, place);
                    return true;
                }
                default -> {
                    // Scalars and the stream's own events neither nest nor repeat anything.
                }
            }
            if (depth > DEEPEST) {
                faults.add(DayFault.YAML_TOO_DEEP, place, DEEPEST);
                return true;
            }
        }
        return false;
    }

    static YamlFields fields(String file, String path, MappingNode mapping, Faults faults) {
        var fields = new YamlFields(file, path, line(mapping), faults);
        for (NodeTuple tuple : mapping.getValue()) {
            String key = tuple.getKeyNode() instanceof ScalarNode scalar ? scalar.getValue() : "(list)";
            fields.put(key, line(tuple.getKeyNode()), tuple.getValueNode());
        }
        return fields;
    }

    static long line(Node node) {
        return node.getStartMark().map(mark -> mark.getLine() + 1L).orElse(1L);
    }

    /// Whether nothing is written where the value would stand.
    static boolean isNothing(Node node) {
        return node instanceof ScalarNode scalar
                && scalar.isPlain()
                && List.of("", "~", "null").contains(scalar.getValue());
    }
}
