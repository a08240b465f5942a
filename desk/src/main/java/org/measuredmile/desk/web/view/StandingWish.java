package org.measuredmile.desk.web.view;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.measuredmile.comparison.standing.Population;
import org.measuredmile.recording.day.Variant;

/// What a page's address asks of a standing: the variant, and the population field by field or as an expression.
public record StandingWish(Variant variant, StandingsView.Wish wish) {
    private static final List<String> FIELDS = List.of(
            "category",
            "maker",
            "drive",
            "sensor",
            "wheel",
            "battery",
            "price",
            "currency",
            "model-year",
            "from",
            "until",
            Population.AT,
            "ledger");
    private static final String VARIANT = "v.";

    public static StandingWish of(Map<String, String> asked) {
        var fields = new LinkedHashMap<String, String>();
        for (String key : FIELDS) {
            String value = asked.getOrDefault(key, "").strip();
            if (!value.isEmpty()) {
                fields.put(key, value);
            }
        }
        var variant = Variant.NONE;
        for (var entry : asked.entrySet()) {
            if (entry.getKey().startsWith(VARIANT) && !entry.getValue().isBlank()) {
                variant = variant.with(
                        entry.getKey().substring(VARIANT.length()),
                        entry.getValue().strip());
            }
        }
        return new StandingWish(
                // The field decides: the variant's own key comes from the page that was left.
                fields.containsKey(Population.AT) ? variant.without(Population.AT) : variant,
                new StandingsView.Wish(
                        fields,
                        asked.getOrDefault("among", "").strip(),
                        asked.getOrDefault("against", "").strip()));
    }

    /// The population's expression; what the fields say stands before it.
    public String expression() {
        String stated = wish.fields().entrySet().stream()
                .map(field -> field.getKey() + "=" + quoted(field.getValue()))
                .collect(Collectors.joining(" "));
        return (stated + " " + wish.among()).strip();
    }

    private static String quoted(String value) {
        return value.chars().anyMatch(Character::isWhitespace) ? '"' + value + '"' : value;
    }

    /// The address of the same population in another variant.
    String href(String figure, Variant other) {
        var path = new StringBuilder(Paths.standing(figure, other));
        char before = other.values().isEmpty() ? '?' : '&';
        for (var field : wish.fields().entrySet()) {
            if (!field.getKey().equals(Population.AT)) {
                path.append(before).append(field.getKey()).append('=').append(Paths.query(field.getValue()));
                before = '&';
            }
        }
        if (!wish.among().isEmpty()) {
            path.append(before).append("among=").append(Paths.query(wish.among()));
        }
        return path.toString();
    }
}
