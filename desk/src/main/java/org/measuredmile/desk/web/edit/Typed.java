package org.measuredmile.desk.web.edit;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/// What somebody typed into a form, by field, as it came; and what is wrong with it, beside each field.
///
/// Shape: a field that was not sent is empty text. Faults name the field they belong to; the empty field name stands
/// for the form as a whole.
public record Typed(Map<String, String> values, Map<String, String> faults) {
    private static final int LONGEST = 2_000;

    /// Nothing typed yet.
    public static final Typed NOTHING = new Typed(Map.of(), Map.of());

    public Typed {
        values = Collections.unmodifiableMap(new TreeMap<>(values));
        faults = Collections.unmodifiableMap(new TreeMap<>(faults));
    }

    /// What a browser sent, each value stripped; what is longer than any field of ours is cut.
    public static Typed of(Map<String, String> sent) {
        var values = new TreeMap<String, String>();
        sent.forEach((field, value) -> {
            String plain = value.strip();
            values.put(field, plain.length() > LONGEST ? plain.substring(0, LONGEST) : plain);
        });
        return new Typed(values, Map.of());
    }

    public String get(String field) {
        return values.getOrDefault(field, "");
    }

    public String getOr(String field, String usual) {
        String value = get(field);
        return value.isEmpty() ? usual : value;
    }

    public String fault(String field) {
        return faults.getOrDefault(field, "");
    }

    public boolean isFaulty(String field) {
        return faults.containsKey(field);
    }

    public Typed with(String field, String value) {
        var more = new TreeMap<>(values);
        more.put(field, value);
        return new Typed(more, faults);
    }

    public Typed wrong(Map<String, String> found) {
        return new Typed(values, found);
    }
}
