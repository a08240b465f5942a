package org.measuredmile.recording.day;

import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/// How a run was ridden, or which of several like figures one is: `drive=throttle level=3`.
///
/// Shape: keys in alphabetical order, so that equal variants print alike.
public record Variant(SortedMap<String, String> values) implements Comparable<Variant> {
    public static final Variant NONE = new Variant(new TreeMap<>());

    public Variant {
        values = Collections.unmodifiableSortedMap(new TreeMap<>(values));
    }

    public static Variant of(Map<String, String> values) {
        return new Variant(new TreeMap<>(values));
    }

    public static Variant of(String key, String value) {
        return NONE.with(key, value);
    }

    public Optional<String> get(String key) {
        return Optional.ofNullable(values.get(key));
    }

    public boolean has(String key, String value) {
        return value.equals(values.get(key));
    }

    public Variant with(String key, String value) {
        var more = new TreeMap<>(values);
        more.put(key, value);
        return new Variant(more);
    }

    public Variant without(String key) {
        var fewer = new TreeMap<>(values);
        fewer.remove(key);
        return new Variant(fewer);
    }

    /// Only the given keys.
    public Variant only(java.util.Collection<String> keys) {
        var kept = new TreeMap<>(values);
        kept.keySet().retainAll(keys);
        return new Variant(kept);
    }

    /// Whether every key of the other has the same value here.
    public boolean covers(Variant other) {
        return values.entrySet().containsAll(other.values.entrySet());
    }

    /// `key=value key=value`, as in runs.csv.
    public String text() {
        return values.entrySet().stream()
                .map(entry -> entry.getKey() + "=" + entry.getValue())
                .collect(Collectors.joining(" "));
    }

    @Override
    public int compareTo(Variant other) {
        return text().compareTo(other.text());
    }
}
