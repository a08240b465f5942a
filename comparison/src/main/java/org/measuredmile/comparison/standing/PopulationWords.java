package org.measuredmile.comparison.standing;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;

/// Says a population in words: `all cargo bikes with throttle, 400 to 600 Wh claimed, the ledger included`.
final class PopulationWords {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.UK);

    private PopulationWords() {}

    static String of(Population population, Optional<LocalDate> upTo) {
        var terms = population.terms();
        var words = new StringBuilder("all ");
        words.append(population.category().isEmpty() ? "" : population.category() + " ");
        words.append("bikes");
        add(words, " of ", population.maker(), "");
        words.append(
                switch (population.drive()) {
                    case "" -> "";
                    case "both" -> " with throttle and pedals";
                    default -> " with " + population.drive() + " drive";
                });
        add(words, ", ", terms.sensor(), " sensor");
        add(words, ", on ", terms.wheel(), "-inch wheels");
        add(words, ", ", terms.battery().map(Band::words).orElse(""), " Wh claimed");
        if (terms.price().isPresent()) {
            add(words, ", priced ", terms.price().get().words(), " " + terms.currency());
        } else {
            add(words, ", priced in ", terms.currency(), "");
        }
        add(words, ", of model year ", terms.modelYear().map(Band::words).orElse(""), "");
        if (terms.version().isPresent()) {
            words.append(", by version ").append(terms.version().getAsInt()).append(" of the trial");
        }
        words.append(
                switch (terms.at()) {
                    case EITHER -> "";
                    case MEASURED -> ", as measured";
                    case REFERENCE -> ", at reference conditions";
                });
        words.append(population.ledger() ? ", the ledger included" : "");
        population.from().ifPresent(date -> words.append(", from ").append(DAY.format(date)));
        upTo.ifPresent(date -> words.append(", to ").append(DAY.format(date)));
        return words.toString();
    }

    private static void add(StringBuilder words, String before, String value, String after) {
        if (!value.isEmpty()) {
            words.append(before).append(value).append(after);
        }
    }
}
