package org.measuredmile.comparison.sentence;

import java.util.Arrays;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Declaration;

/// Fills the slots of what a trial says of a figure, in one voice.
///
/// Shape: slots as [org.measuredmile.trial.Saying] names them; one without a value drops out with its comma.
record Phrase(Voice voice, String name, Declaration trial, Variant variant) {
    private static final Pattern SLOT = Pattern.compile("\\{([^}]*)\\}");
    private static final Pattern QUANTITY = Pattern.compile("([A-Z_]+) (-?[0-9.]+)");

    static Phrase of(Voice voice, Bike bike, Declaration trial, Variant variant) {
        return new Phrase(voice, name(bike), trial, variant);
    }

    /// What a bike is called in a sentence: `the Lamplight`.
    static String name(Bike bike) {
        return "the " + (bike.model().isBlank() ? bike.title() : bike.model());
    }

    /// The template with its slots filled and no capital at its beginning.
    String fill(String template, String value) {
        var filled = new StringBuilder();
        var slots = SLOT.matcher(template);
        int from = 0;
        while (slots.find()) {
            filled.append(literal(template.substring(from, slots.start()))).append(slot(slots.toMatchResult(), value));
            from = slots.end();
        }
        return tidy(filled.append(literal(template.substring(from))).toString());
    }

    /// Words between slots; only those with numbers differ between the voices.
    private String literal(String words) {
        return words.chars().anyMatch(Character::isDigit)
                ? " " + voice.words(words) + (words.endsWith(", ") ? ", " : " ")
                : words;
    }

    private String slot(MatchResult found, String value) {
        String slot = found.group(1);
        var quantity = QUANTITY.matcher(slot);
        if (quantity.matches()) {
            return voice.quantity(Double.parseDouble(quantity.group(2)), QuantityKind.valueOf(quantity.group(1)));
        }
        return switch (slot) {
            case "bike" -> name;
            case "bike’s" -> name + "’s";
            case "value" -> value;
            case "ride" -> voice.words(ride());
            default -> voice.words(key(slot));
        };
    }

    /// A variant key's value in words; an id without words of its own as a name, `mill-hill` as Mill Hill.
    private String key(String key) {
        return variant.get(key)
                .map(value -> trial.variant(key)
                        .filter(declared -> declared.names(value))
                        .map(declared -> declared.words(value))
                        .orElseGet(() -> named(value)))
                .orElse("");
    }

    private static String named(String id) {
        return Arrays.stream(id.split("[-_]"))
                .filter(word -> !word.isEmpty())
                .map(Phrase::capital)
                .collect(Collectors.joining(" "));
    }

    /// Drive and level together: `pedalling lightly at level 3 (its highest)`, `by throttle alone`.
    private String ride() {
        String drive = key("drive");
        String level = variant.get("level").orElse("");
        String atLevel = switch (level) {
            case "" -> "";
            case "off" -> "with the motor off";
            case "throttle" -> drive.isEmpty() ? "by throttle alone" : "";
            default -> "at level " + level + role();
        };
        return (drive + " " + atLevel).strip();
    }

    private String role() {
        return switch (variant.get("levelRole").orElse("")) {
            case "highest" -> " (its highest)";
            case "lowest" -> " (its lowest)";
            default -> "";
        };
    }

    /// All of the variant in words, behind a figure whose trial has not said how it makes a sentence.
    String variantWords() {
        return variant.values().isEmpty() ? "" : voice.words(trial.words(variant));
    }

    static String capital(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /// As words stand inside a sentence; a slot at their beginning stays as it is.
    static String small(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1);
    }

    /// One space between words, no comma at the beginning, before another or before the end.
    static String tidy(String text) {
        return text.replaceAll(" +", " ")
                .replaceAll(" ?,(?: ?,)+", ",")
                .replace(" ,", ",")
                .replaceAll(",(?=[A-Za-z])", ", ")
                .replaceAll(",\\s*(?=[.;:])", "")
                .replaceAll("^[ ,]+|[ ,]+$", "");
    }
}
