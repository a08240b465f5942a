package org.measuredmile.recording;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/// What columns were set to mean, by instrument, for the reader of a file to choose from.
///
/// Shape: where the file's instrument is `named`, its settings hold; else those of the one instrument whose set
/// columns all stand in the file's head. Where two instruments fit, neither does.
public record ColumnSettings(SortedMap<String, List<ColumnSetting>> byInstrument, boolean named) {
    /// Nothing was set.
    public static final ColumnSettings NONE = new ColumnSettings(new TreeMap<>(), false);

    public ColumnSettings {
        byInstrument = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(byInstrument));
    }

    /// Those of the instrument that wrote the file.
    public static ColumnSettings of(String instrument, List<ColumnSetting> columns) {
        var one = new TreeMap<String, List<ColumnSetting>>();
        if (!columns.isEmpty()) {
            one.put(instrument, List.copyOf(columns));
        }
        return new ColumnSettings(one, true);
    }

    /// Those of all instruments that may have written the file.
    public static ColumnSettings among(Map<String, List<ColumnSetting>> candidates) {
        var some = new TreeMap<String, List<ColumnSetting>>();
        candidates.forEach((instrument, columns) -> {
            if (!columns.isEmpty()) {
                some.put(instrument, List.copyOf(columns));
            }
        });
        return new ColumnSettings(some, false);
    }

    /// The settings of one instrument.
    public record Chosen(String instrument, List<ColumnSetting> columns) {
        public Optional<ColumnSetting> of(String column) {
            return columns.stream()
                    .filter(setting -> setting.name().equals(column.strip()))
                    .findFirst();
        }
    }

    /// The settings that hold for a table whose columns have these names.
    public Optional<Chosen> forHead(Collection<String> names) {
        List<Chosen> fit = byInstrument.entrySet().stream()
                .filter(one -> named || covers(one.getValue(), names))
                .map(one -> new Chosen(one.getKey(), one.getValue()))
                .toList();
        return fit.size() == 1 ? Optional.of(fit.getFirst()) : Optional.empty();
    }

    private static boolean covers(List<ColumnSetting> columns, Collection<String> names) {
        return columns.stream().allMatch(column -> names.contains(column.name()));
    }
}
