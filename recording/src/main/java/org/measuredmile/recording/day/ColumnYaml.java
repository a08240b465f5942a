package org.measuredmile.recording.day;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.measuredmile.recording.ColumnSetting;

/// Reads and writes what the columns of an instrument's tables mean, in day.yaml.
final class ColumnYaml {
    private ColumnYaml() {}

    /// The list under `columns` of an instrument; entries that cannot be used are faults.
    static List<ColumnSetting> read(YamlFields instrument, Faults faults) {
        List<ColumnSetting> columns = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (YamlFields one : instrument.mappings("columns")) {
            Optional<String> name = one.needed("name", "the column's name, as it stands in the file's head");
            Optional<String> meaning = one.needed("meaning", "what the column means, as wheel-speed, time or none")
                    .flatMap(word -> one.word("meaning", ColumnSetting.meanings()));
            Optional<ColumnSetting> column =
                    name.flatMap(known -> meaning.flatMap(word -> setting(known, word, one, faults)));
            one.nameUnknown();
            if (column.isPresent() && !seen.add(column.get().name())) {
                faults.add(
                        DayFault.ENTRY_TWICE,
                        one.place("name"),
                        Faults.quoted(column.get().name()));
            } else {
                column.ifPresent(columns::add);
            }
        }
        return columns;
    }

    private static Optional<ColumnSetting> setting(String name, String meaning, YamlFields one, Faults faults) {
        Optional<ColumnSetting> column = ColumnSetting.of(name, meaning, one.text("unit"));
        if (column.isEmpty()) {
            List<String> units = ColumnSetting.units(meaning);
            faults.add(
                    DayFault.NOT_ONE_OF,
                    one.place("unit"),
                    Faults.quoted(one.text("unit")),
                    units.isEmpty() ? "the units of a " + meaning + ", which has none" : String.join(", ", units));
        }
        return column;
    }

    static List<YamlKeys> keys(List<ColumnSetting> columns) {
        return columns.stream()
                .map(one -> new YamlKeys()
                        .text("name", one.name())
                        .text("meaning", one.meaning())
                        .text("unit", one.unit()))
                .toList();
    }
}
