package org.measuredmile.comparison.standing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Variant;

/// The stated set of bikes that a rank is taken in: `category=cargo drive=throttle until=2031-06-30 ledger=yes`.
///
/// Shape: `category`, `maker` and `drive` are empty text for any; a bike that has both drives belongs to either. `from`
/// and `until` bound the day of the result, both days belonging to it. Results of the ledger stand in it only when
/// `ledger` says so. A bike of which the fact is not known that a term asks for does not belong to it.
public record Population(
        String category,
        String maker,
        String drive,
        Optional<LocalDate> from,
        Optional<LocalDate> until,
        boolean ledger,
        Terms terms) {
    /// Every bike, without the ledger.
    public static final Population EVERY_BIKE =
            new Population("", "", "", Optional.empty(), Optional.empty(), false, Terms.ANY);

    /// The key of a variant that says at which conditions a figure is.
    public static final String AT = "at";

    /// At which conditions a result is: as the day was, or brought to the trial's reference.
    public enum Conditions {
        EITHER,
        MEASURED,
        REFERENCE
    }

    /// What may be asked for beside category, maker, drive and dates.
    ///
    /// Unit: `battery` in watt-hours by the maker's claim, `price` in `currency`, `modelYear` in years.
    /// Shape: empty text and empty numbers for any; `version` is the trial's.
    public record Terms(
            String sensor,
            String wheel,
            Optional<Band> battery,
            Optional<Band> price,
            String currency,
            Optional<Band> modelYear,
            OptionalInt version,
            Conditions at) {
        public static final Terms ANY = new Terms(
                "",
                "",
                Optional.empty(),
                Optional.empty(),
                "",
                Optional.empty(),
                OptionalInt.empty(),
                Conditions.EITHER);
    }

    /// A population that asks for category, maker, drive and dates only.
    public Population(
            String category,
            String maker,
            String drive,
            Optional<LocalDate> from,
            Optional<LocalDate> until,
            boolean ledger) {
        this(category, maker, drive, from, until, ledger, Terms.ANY);
    }

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
        return new PopulationReader().read(expression);
    }

    /// The expression that states this population, always written the same way.
    public String expression() {
        var written = new ArrayList<String>();
        add(written, "category", category);
        add(written, "maker", maker);
        add(written, "drive", drive);
        add(written, "sensor", terms.sensor());
        add(written, "wheel", terms.wheel());
        add(written, "battery", terms.battery().map(Band::text).orElse(""));
        add(written, "price", terms.price().map(Band::text).orElse(""));
        add(written, "currency", terms.currency());
        add(written, "model-year", terms.modelYear().map(Band::text).orElse(""));
        add(written, "from", from.map(LocalDate::toString).orElse(""));
        add(written, "until", until.map(LocalDate::toString).orElse(""));
        add(
                written,
                "version",
                terms.version().isPresent() ? Integer.toString(terms.version().getAsInt()) : "");
        add(
                written,
                AT,
                terms.at() == Conditions.EITHER ? "" : terms.at().name().toLowerCase(Locale.ROOT));
        add(written, "ledger", ledger ? "yes" : "");
        return String.join(" ", written);
    }

    /// The population in words, with the day up to which it holds where that is known.
    public String words(Optional<LocalDate> upTo) {
        return PopulationWords.of(this, upTo);
    }

    private static void add(List<String> written, String key, String value) {
        if (!value.isEmpty()) {
            boolean isOneWord = value.chars().noneMatch(Character::isWhitespace);
            written.add(key + "=" + (isOneWord ? value : '"' + value + '"'));
        }
    }

    /// A wanted variant with what the population asks of it: at reference conditions.
    public Variant asking(Variant wanted) {
        return terms.at() == Conditions.REFERENCE && wanted.get(AT).isEmpty() ? wanted.with(AT, "reference") : wanted;
    }

    /// Whether results of a variant may belong to it.
    public boolean admits(Variant variant) {
        return switch (terms.at()) {
            case EITHER -> true;
            case MEASURED -> variant.get(AT).isEmpty();
            case REFERENCE -> variant.has(AT, "reference");
        };
    }

    /// Why an entrant does not belong to it; empty when it does.
    public Optional<String> excludes(Entrant entrant) {
        if (entrant.isFromLedger() && !ledger) {
            return Optional.of("a result of the ledger");
        }
        if (!admits(entrant.variant())) {
            return Optional.of(
                    terms.at() == Conditions.REFERENCE ? "as measured, not at reference" : "at reference conditions");
        }
        return reasonByName("category", category, entrant.category())
                .or(() -> reasonByName("maker", maker, entrant.maker()))
                .or(() -> reasonByDrive(entrant.drive()))
                .or(() -> reasonByName(
                        "sensor", terms.sensor(), known(entrant.traits().sensor())))
                .or(() -> reasonByName(
                        "wheel size", terms.wheel(), wheel(entrant.traits().wheel())))
                .or(() -> reasonByBand(
                        "battery energy", terms.battery(), entrant.traits().batteryWh()))
                .or(() -> reasonByName(
                        "currency", terms.currency(), entrant.traits().currency()))
                .or(() -> reasonByBand("price", terms.price(), entrant.traits().price()))
                .or(() -> reasonByBand("model year", terms.modelYear(), year(entrant)))
                .or(() -> reasonByDay(entrant))
                .or(() -> reasonByVersion(entrant));
    }

    private static Optional<String> reasonByName(String fact, String wanted, String found) {
        if (wanted.isEmpty() || wanted.equalsIgnoreCase(found)) {
            return Optional.empty();
        }
        return Optional.of(found.isEmpty() ? unknown(fact) : "another " + fact);
    }

    private static String unknown(String fact) {
        return "no " + fact + " is written down";
    }

    private Optional<String> reasonByDrive(String found) {
        return found.equals("both") ? Optional.empty() : reasonByName("drive", drive, found);
    }

    private static Optional<String> reasonByBand(String fact, Optional<Band> wanted, OptionalDouble found) {
        if (wanted.isEmpty()) {
            return Optional.empty();
        }
        if (found.isEmpty()) {
            return Optional.of(unknown(fact));
        }
        return wanted.get().holds(found.getAsDouble()) ? Optional.empty() : Optional.of("another " + fact);
    }

    private static OptionalDouble year(Entrant entrant) {
        var year = entrant.traits().modelYear();
        return year.isPresent() ? OptionalDouble.of(year.getAsInt()) : OptionalDouble.empty();
    }

    private static String known(String sensor) {
        return sensor.equals("unknown") ? "" : sensor;
    }

    /// A wheel size as it is compared: `20"`, `20 in` and `20` are one.
    static String wheel(String written) {
        return written.strip().replaceFirst("\\s*(\"|″|in|inch|inches)$", "");
    }

    private Optional<String> reasonByDay(Entrant entrant) {
        boolean isTooEarly = from.filter(day -> entrant.date().isBefore(day)).isPresent();
        boolean isTooLate = until.filter(day -> entrant.date().isAfter(day)).isPresent();
        return isTooEarly || isTooLate ? Optional.of("tested on another date") : Optional.empty();
    }

    private Optional<String> reasonByVersion(Entrant entrant) {
        boolean isAnother = terms.version().isPresent()
                && !entrant.isFromLedger()
                && entrant.version() != terms.version().getAsInt();
        return isAnother ? Optional.of("version " + entrant.version() + " of the trial") : Optional.empty();
    }
}
