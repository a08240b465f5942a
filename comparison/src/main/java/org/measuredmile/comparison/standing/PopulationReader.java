package org.measuredmile.comparison.standing;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import org.measuredmile.comparison.standing.Population.Conditions;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;

/// Reads a population's expression: terms `key=value`, a value with blanks in double quotes.
///
/// Error: every fault is gathered, each with what to write instead.
final class PopulationReader {
    private static final String SOURCE = "--among";
    private static final Pattern TERM = Pattern.compile("[^\\s\"]*\"[^\"]*\"?\\S*|\\S+");
    private static final List<String> KEYS = List.of(
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
            "version",
            Population.AT,
            "ledger");

    private final List<Finding> faults = new ArrayList<>();
    private final Map<String, String> values = new LinkedHashMap<>();

    Population.Read read(String expression) {
        TERM.matcher(expression).results().forEach(term -> take(term.group()));
        var population = population();
        if (values.containsKey("price") && !values.containsKey("currency")) {
            fault("price", "a price band needs its currency", "add it as in price=1000-2000 currency=EUR");
        }
        return faults.isEmpty() ? new Population.Read.Stated(population) : new Population.Read.Unclear(faults);
    }

    private void take(String term) {
        int equals = term.indexOf('=');
        String key = equals < 0 ? term : term.substring(0, equals);
        String value = equals < 0 ? "" : unquoted(term.substring(equals + 1));
        if (value.isEmpty()) {
            fault(
                    term,
                    "\"" + term + "\" is not key=value",
                    "write it as in category=cargo; a value with blanks stands in double quotes");
        } else if (value.contains("\"")) {
            fault(key, "a quote is left open or in the middle", "put double quotes around the whole value");
        } else if (!KEYS.contains(key)) {
            fault(
                    key,
                    "no population is stated by \"" + key + "\"",
                    "use " + String.join(", ", KEYS) + "; what says how a run was ridden stands before --among");
        } else if (values.putIfAbsent(key, value) != null) {
            fault(key, key + " stands twice", "leave one of them out");
        }
    }

    private static String unquoted(String value) {
        boolean isQuoted = value.length() >= 2 && value.startsWith("\"") && value.endsWith("\"");
        return (isQuoted ? value.substring(1, value.length() - 1) : value).strip();
    }

    private Population population() {
        return new Population(
                text("category"),
                text("maker"),
                oneOf("drive", "throttle", "pedal", "both"),
                date("from"),
                date("until"),
                withLedger(),
                new Population.Terms(
                        oneOf("sensor", "cadence", "torque"),
                        Population.wheel(text("wheel")),
                        band("battery", "Wh", "battery=400-600"),
                        band("price", "", "price=1000-2000"),
                        text("currency"),
                        band("model-year", "", "model-year=2030-2031"),
                        version(),
                        conditions()));
    }

    private String text(String key) {
        return values.getOrDefault(key, "");
    }

    private String oneOf(String key, String... possible) {
        String value = text(key);
        if (!value.isEmpty() && !List.of(possible).contains(value)) {
            fault(key, "\"" + value + "\" is no " + key, "write " + key + "= with " + String.join(" or ", possible));
        }
        return value;
    }

    private boolean withLedger() {
        String value = text("ledger");
        if (!List.of("", "yes", "no").contains(value)) {
            fault("ledger", "\"" + value + "\" is neither yes nor no", "write ledger=yes");
        }
        return value.equals("yes");
    }

    private Optional<LocalDate> date(String key) {
        String value = text(key);
        if (value.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(LocalDate.parse(value));
        } catch (DateTimeParseException notADate) {
            fault(key, "\"" + value + "\" is no date", "write year, month and day as in 2031-06-30");
            return Optional.empty();
        }
    }

    private Optional<Band> band(String key, String unit, String example) {
        String value = text(key);
        if (value.isEmpty()) {
            return Optional.empty();
        }
        boolean hasUnit = !unit.isEmpty() && value.endsWith(unit);
        String numbers =
                hasUnit ? value.substring(0, value.length() - unit.length()).strip() : value;
        var band = Band.parse(numbers);
        if (band.isEmpty()) {
            fault(
                    key,
                    "\"" + value + "\" is no band",
                    "write lowest and highest as in " + example + "; leave an end out to leave it open");
        }
        return band;
    }

    private OptionalInt version() {
        String value = text("version");
        if (value.isEmpty()) {
            return OptionalInt.empty();
        }
        if (!value.matches("[1-9]\\d{0,3}")) {
            fault("version", "\"" + value + "\" is no version of a trial", "write a whole number as in version=2");
            return OptionalInt.empty();
        }
        return OptionalInt.of(Integer.parseInt(value));
    }

    private Conditions conditions() {
        return switch (oneOf(Population.AT, "reference", "measured")) {
            case "reference" -> Conditions.REFERENCE;
            case "measured" -> Conditions.MEASURED;
            default -> Conditions.EITHER;
        };
    }

    private void fault(String where, String message, String remedy) {
        faults.add(Finding.refused("population", new Place(SOURCE, where), message, remedy));
    }
}
