package org.measuredmile.recording.day;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Place;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/// The keys and values of one mapping of a YAML file, taken one by one; keys nobody asked for are named at the end.
///
/// Shape: a value that cannot be used is a fault with file, line and key, and reads as absent.
final class YamlFields {
    private final String file;
    private final String path;
    private final long line;
    private final Faults faults;
    private final Map<String, Field> fields = new LinkedHashMap<>();
    private final Set<String> asked = new TreeSet<>();

    private record Field(long line, Node value) {}

    YamlFields(String file, String path, long line, Faults faults) {
        this.file = file;
        this.path = path;
        this.line = line;
        this.faults = faults;
    }

    void put(String key, long keyLine, Node value) {
        if (fields.containsKey(key)) {
            faults.add(DayFault.KEY_TWICE, Place.atField(file, keyLine, path + key));
        } else {
            fields.put(key, new Field(keyLine, value));
        }
    }

    Place place(String key) {
        Field field = fields.get(key);
        return Place.atField(file, field == null ? line : field.line(), path + key);
    }

    /// Where the mapping itself begins.
    Place place() {
        return Place.atLine(file, line);
    }

    FieldText.At at(String key) {
        return new FieldText.At(place(key), faults);
    }

    private Optional<Node> node(String key) {
        asked.add(key);
        return Optional.ofNullable(fields.get(key)).map(Field::value).filter(value -> !YamlText.isNothing(value));
    }

    /// A value as text, empty when nothing is written.
    String text(String key) {
        Optional<Node> node = node(key);
        if (node.isPresent() && !(node.get() instanceof ScalarNode)) {
            faults.add(DayFault.NOT_ONE_VALUE, place(key));
            return "";
        }
        return node.map(one -> ((ScalarNode) one).getValue().strip()).orElse("");
    }

    /// A text that must be there; nothing, and a fault, when it is not.
    Optional<String> needed(String key, String what) {
        String text = text(key);
        if (text.isEmpty()) {
            faults.add(DayFault.KEY_MISSING, place(key), what);
            return Optional.empty();
        }
        return Optional.of(text);
    }

    /// A text that must be one of some words; nothing when it is not written or another.
    Optional<String> word(String key, List<String> allowed) {
        String text = text(key);
        if (text.isEmpty() || allowed.contains(text)) {
            return Optional.of(text).filter(one -> !one.isEmpty());
        }
        faults.add(DayFault.NOT_ONE_OF, place(key), Faults.quoted(text), String.join(", ", allowed));
        return Optional.empty();
    }

    OptionalDouble quantity(String key, QuantityKind kind) {
        return FieldText.quantity(text(key), kind, Optional.empty(), at(key));
    }

    /// A quantity that may stand without its unit.
    OptionalDouble number(String key, QuantityKind kind, Unit bare) {
        return FieldText.quantity(text(key), kind, Optional.of(bare), at(key));
    }

    /// The value when it lies in a range; a fault and nothing when it does not.
    OptionalDouble within(String key, OptionalDouble value, Interval range, String words) {
        if (value.isEmpty() || range.contains(value.getAsDouble())) {
            return value;
        }
        faults.add(DayFault.OUT_OF_RANGE, place(key), Faults.quoted(text(key)), words);
        return OptionalDouble.empty();
    }

    OptionalInt wholeNumber(String key, int least, int most) {
        String text = text(key);
        if (text.isEmpty()) {
            return OptionalInt.empty();
        }
        if (text.matches("\\d{1,9}")) {
            int number = Integer.parseInt(text);
            if (number >= least && number <= most) {
                return OptionalInt.of(number);
            }
        }
        faults.add(DayFault.NOT_A_WHOLE_NUMBER, place(key), Faults.quoted(text), least, most);
        return OptionalInt.empty();
    }

    Optional<LocalDate> date(String key) {
        return FieldText.date(text(key), at(key));
    }

    /// The mapping under a key; an empty one when there is none.
    YamlFields mapping(String key) {
        Optional<Node> node = node(key);
        if (node.isPresent() && node.get() instanceof MappingNode mapping) {
            return YamlText.fields(file, path + key + ".", mapping, faults);
        }
        if (node.isPresent()) {
            faults.add(DayFault.NOT_A_MAPPING, place(key));
        }
        return new YamlFields(file, path + key + ".", line, faults);
    }

    boolean isEmpty() {
        return fields.isEmpty();
    }

    boolean has(String key) {
        return node(key).isPresent();
    }

    /// An entry of a list: either one word or a mapping.
    record Entry(String word, Optional<YamlFields> fields, Place place) {}

    List<Entry> list(String key) {
        Optional<Node> node = node(key);
        if (node.isEmpty()) {
            return List.of();
        }
        if (!(node.get() instanceof SequenceNode sequence)) {
            faults.add(DayFault.NOT_A_LIST, place(key));
            return List.of();
        }
        List<Entry> entries = new ArrayList<>();
        for (Node one : sequence.getValue()) {
            Place at = Place.atField(file, YamlText.line(one), path + key);
            switch (one) {
                case MappingNode mapping ->
                    entries.add(
                            new Entry("", Optional.of(YamlText.fields(file, path + key + ".", mapping, faults)), at));
                case ScalarNode scalar
                when !YamlText.isNothing(scalar) ->
                    entries.add(new Entry(scalar.getValue().strip(), Optional.empty(), at));
                default -> faults.add(DayFault.NOT_ONE_VALUE, at);
            }
        }
        return entries;
    }

    /// The entries of a list that are mappings; single words among them are faults.
    List<YamlFields> mappings(String key) {
        List<YamlFields> mappings = new ArrayList<>();
        for (Entry entry : list(key)) {
            if (entry.fields().isPresent()) {
                mappings.add(entry.fields().get());
            } else {
                faults.add(DayFault.NOT_A_MAPPING, entry.place());
            }
        }
        return mappings;
    }

    /// Names the keys that nobody asked for.
    void nameUnknown() {
        List<String> unknown =
                fields.keySet().stream().filter(key -> !asked.contains(key)).toList();
        if (!unknown.isEmpty()) {
            String key = unknown.getFirst();
            faults.add(DayFault.KEY_UNKNOWN, place(key), Faults.quoted(String.join(", ", unknown)));
        }
    }
}
