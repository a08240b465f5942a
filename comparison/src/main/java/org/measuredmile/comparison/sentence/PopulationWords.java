package org.measuredmile.comparison.sentence;

import java.util.ArrayList;
import org.measuredmile.comparison.standing.Population;

/// A population in words: `cargo bikes with throttle drive, the ledger included`.
///
/// Shape: made of the expression's terms; one that has no words of its own is said by its key and value.
final class PopulationWords {
    private PopulationWords() {}

    static String of(Population population) {
        String kind = "";
        var after = new ArrayList<String>();
        for (String term : population.expression().split(" ")) {
            int equals = term.indexOf('=');
            if (equals < 0) {
                continue;
            }
            String key = term.substring(0, equals);
            String value = term.substring(equals + 1);
            if (key.equals("category")) {
                kind = value + " ";
            } else {
                after.add(words(key, value));
            }
        }
        return (kind + "bikes " + String.join(" ", after)).strip();
    }

    private static String words(String key, String value) {
        return switch (key) {
            case "maker" -> "of " + value;
            case "drive" -> value.equals("both") ? "with throttle and pedals" : "with " + value + " drive";
            case "sensor" -> "with a " + value + " sensor";
            case "from" -> "tested from " + value;
            case "until" -> "tested up to " + value;
            case "ledger" -> "with the ledger";
            default -> "with " + key.replace('-', ' ') + " " + value;
        };
    }
}
