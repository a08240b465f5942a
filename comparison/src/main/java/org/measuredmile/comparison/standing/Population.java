package org.measuredmile.comparison.standing;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;

/// The stated set of bikes that a rank is taken in: `category=cargo drive=throttle until=2031-06-30 ledger=yes`.
///
/// Shape: `category`, `maker` and `drive` are empty text for any; a bike that has both drives belongs to either. `from`
/// and `until` bound the day of the result, both days belonging to it. Results of the ledger stand in it only when
/// `ledger` says so.
public record Population(
        String category,
        String maker,
        String drive,
        Optional<LocalDate> from,
        Optional<LocalDate> until,
        boolean ledger) {
    /// Every bike, without the ledger.
    public static final Population EVERY_BIKE = new Population("", "", "", Optional.empty(), Optional.empty(), false);

    private static final String SOURCE = "--among";

    /// What came of reading an expression.
    public sealed interface Read {
        record Stated(Population population) implements Read {}

        /// Every term that cannot be used, each with what to write instead.
        record Unclear(List<Finding> faults) implements Read {
            public Unclear {
                faults = List.copyOf(faults);
            }
        }
    }

    /// The population of an expression of `key=value` terms; an empty one means every bike.
    public static Read parse(String expression) {
        var population = EVERY_BIKE;
        var faults = new ArrayList<Finding>();
        var seen = new HashSet<String>();
        for (String term : expression.strip().split("\\s+")) {
            if (term.isEmpty()) {
                continue;
            }
            int equals = term.indexOf('=');
            String key = equals < 0 ? term : term.substring(0, equals);
            String value = equals < 0 ? "" : term.substring(equals + 1);
            if (value.isEmpty()) {
                faults.add(fault(term, "\"" + term + "\" is not key=value", "write it as in category=cargo"));
            } else if (!seen.add(key)) {
                faults.add(fault(term, key + " stands twice", "leave one of them out"));
            } else {
                population = population.with(key, value, faults);
            }
        }
        return faults.isEmpty() ? new Read.Stated(population) : new Read.Unclear(faults);
    }

    private Population with(String key, String value, List<Finding> faults) {
        return switch (key) {
            case "category" -> new Population(value, maker, drive, from, until, ledger);
            case "maker" -> new Population(category, value, drive, from, until, ledger);
            case "drive" -> {
                if (!List.of("throttle", "pedal", "both").contains(value)) {
                    faults.add(fault("drive", "\"" + value + "\" is no drive", "write throttle, pedal or both"));
                }
                yield new Population(category, maker, value, from, until, ledger);
            }
            case "from" -> new Population(category, maker, drive, date(key, value, faults), until, ledger);
            case "until" -> new Population(category, maker, drive, from, date(key, value, faults), ledger);
            case "ledger" -> {
                if (!value.equals("yes") && !value.equals("no")) {
                    faults.add(fault("ledger", "\"" + value + "\" is neither yes nor no", "write ledger=yes"));
                }
                yield new Population(category, maker, drive, from, until, value.equals("yes"));
            }
            default -> {
                faults.add(fault(
                        key,
                        "no population is stated by \"" + key + "\"",
                        "use category, maker, drive, from, until or ledger; "
                                + "what says how a run was ridden stands before --among"));
                yield this;
            }
        };
    }

    private static Optional<LocalDate> date(String key, String value, List<Finding> faults) {
        try {
            return Optional.of(LocalDate.parse(value));
        } catch (DateTimeParseException notADate) {
            faults.add(fault(key, "\"" + value + "\" is no date", "write year, month and day as in 2031-06-30"));
            return Optional.empty();
        }
    }

    private static Finding fault(String where, String message, String remedy) {
        return Finding.refused("population", new Place(SOURCE, where), message, remedy);
    }

    /// The expression that states this population, always written the same way.
    public String expression() {
        var terms = new ArrayList<String>();
        addTerm(terms, "category", category);
        addTerm(terms, "maker", maker);
        addTerm(terms, "drive", drive);
        from.ifPresent(day -> terms.add("from=" + day));
        until.ifPresent(day -> terms.add("until=" + day));
        if (ledger) {
            terms.add("ledger=yes");
        }
        return String.join(" ", terms);
    }

    private static void addTerm(List<String> terms, String key, String value) {
        if (!value.isEmpty()) {
            terms.add(key + "=" + value);
        }
    }

    /// Why an entrant does not belong to it; empty when it does.
    public Optional<String> excludes(Entrant entrant) {
        if (entrant.isFromLedger() && !ledger) {
            return Optional.of("a result of the ledger");
        }
        if (!fits(category, entrant.category())) {
            return Optional.of("another category");
        }
        if (!fits(maker, entrant.maker())) {
            return Optional.of("another maker");
        }
        if (!drive.isEmpty()
                && !drive.equals(entrant.drive())
                && !entrant.drive().equals("both")) {
            return Optional.of(entrant.drive().isEmpty() ? "no drive is written down" : "another drive");
        }
        boolean isTooEarly = from.filter(day -> entrant.date().isBefore(day)).isPresent();
        boolean isTooLate = until.filter(day -> entrant.date().isAfter(day)).isPresent();
        return isTooEarly || isTooLate ? Optional.of("tested on another date") : Optional.empty();
    }

    private static boolean fits(String wanted, String found) {
        return wanted.isEmpty() || wanted.toLowerCase(Locale.ROOT).equals(found.toLowerCase(Locale.ROOT));
    }
}
