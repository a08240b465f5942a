package org.measuredmile.desk.web.edit;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.CrewMember;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Rider;
import org.measuredmile.recording.day.TestDay;

/// A new test day as typed, with its bike where that is new too; all faults at once, each beside its field.
public final class NewDay {
    /// How many rows for new instruments the form has.
    public static final int INSTRUMENT_ROWS = 4;

    private static final String NEW = "new";
    private static final List<String> DRIVES = List.of("throttle", "pedal", "both");

    private final Typed typed;
    private final UnitSystem system;
    private final Map<String, String> faults = new TreeMap<>();

    /// What came of reading the form.
    public sealed interface Read {
        /// A day that can be kept.
        record Kept(TestDay day, Bike bike) implements Read {}

        /// The form with its faults; nothing typed is lost.
        record Refused(Typed typed) implements Read {}
    }

    public NewDay(Typed typed, UnitSystem system) {
        this.typed = typed;
        this.system = system;
    }

    /// Reads the form.
    ///
    /// @param known the bikes of the archive by id
    /// @param taken the ids that days have already
    /// @param kits the instruments of other days, by their ids
    public Read read(Map<String, Bike> known, List<String> taken, Map<String, List<Instrument>> kits) {
        if (!CrewCode.isOne(typed.get("who"))) {
            faults.put("who", "Who writes this? A crew code of letters and digits, such as T1.");
        }
        Bike bike = bike(known);
        Optional<LocalDate> date = date();
        ZoneId zone = zone();
        if (typed.get("place").isEmpty()) {
            faults.put("place", "Where was it? The name of the road or the lane.");
        }
        var riders = riders();
        var crew = crew();
        var conditions = conditions();
        var configuration = configuration();
        var instruments = instruments(kits);
        if (!faults.isEmpty() || date.isEmpty()) {
            return new Read.Refused(typed.wrong(faults));
        }
        var day = new TestDay(
                id(date.get(), bike, taken),
                date.get(),
                zone,
                typed.get("place"),
                bike.id(),
                configuration,
                crew,
                riders,
                Optional.empty(),
                conditions,
                instruments,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
        return new Read.Kept(day, bike);
    }

    private static String id(LocalDate date, Bike bike, List<String> taken) {
        String plain = date + "-" + bike.id();
        String id = plain;
        for (int i = 2; taken.contains(id); i++) {
            id = plain + "-" + i;
        }
        return id;
    }

    private Bike bike(Map<String, Bike> known) {
        String chosen = typed.getOr("bike", NEW);
        if (!chosen.equals(NEW)) {
            Bike bike = known.get(chosen);
            if (bike == null) {
                faults.put("bike", "No bike “" + chosen + "” is in this archive.");
                return Bike.known("unknown");
            }
            return bike;
        }
        if (typed.get("model").isEmpty()) {
            faults.put("model", "What is the bike called?");
        }
        if (typed.get("category").isEmpty()) {
            faults.put("category", "Which kind of bike? It is ranked among its kind.");
        } else if (!typed.get("category").matches("[\\p{L}\\p{N}-]+")) {
            faults.put("category", "One word, such as cargo or step-through.");
        }
        if (!DRIVES.contains(typed.get("drive"))) {
            faults.put("drive", "Throttle, pedals, or both?");
        }
        String id = slug(typed.get("maker") + " " + typed.get("model"));
        if (known.containsKey(id)) {
            faults.put("model", "This bike is in the archive already: choose it above.");
        }
        return new Bike(
                id.isEmpty() ? "bike" : id,
                typed.get("maker"),
                typed.get("model"),
                OptionalInt.empty(),
                typed.get("category").toLowerCase(Locale.ROOT),
                typed.get("drive"),
                "unknown",
                levels(),
                typed.get("wheelSize"),
                Bike.Price.UNKNOWN,
                Bike.Loan.UNKNOWN,
                List.of());
    }

    private OptionalInt levels() {
        String text = typed.get("levels");
        if (text.isEmpty()) {
            return OptionalInt.empty();
        }
        if (!text.matches("\\d{1,2}")) {
            faults.put("levels", "How many levels, as a whole number.");
            return OptionalInt.empty();
        }
        return OptionalInt.of(Integer.parseInt(text));
    }

    private static String slug(String words) {
        return words.toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N}]+", "-")
                .replaceAll("^-+|-+$", "");
    }

    /// Those of the day that was chosen, as they are known there, and those of the rows.
    private List<Instrument> instruments(Map<String, List<Instrument>> kits) {
        String from = typed.get("instrumentsOf");
        if (!from.isEmpty() && !kits.containsKey(from)) {
            faults.put("instrumentsOf", "No day “" + from + "” has instruments.");
        }
        List<Instrument> known = kits.getOrDefault(from, List.of());
        return new TypedInstruments(typed, system, faults).behind(known, INSTRUMENT_ROWS);
    }

    private Optional<LocalDate> date() {
        try {
            return Optional.of(LocalDate.parse(typed.get("date")));
        } catch (DateTimeException noDate) {
            faults.put("date", "Year, month and day, as in 2031-06-30.");
            return Optional.empty();
        }
    }

    private ZoneId zone() {
        try {
            return ZoneId.of(typed.getOr("timeZone", "UTC"));
        } catch (DateTimeException noZone) {
            faults.put("timeZone", "A time zone by its place, as in Europe/London.");
            return ZoneId.of("UTC");
        }
    }

    private List<Rider> riders() {
        String code = typed.get("rider");
        if (code.isEmpty()) {
            return List.of();
        }
        if (!CrewCode.isOne(code)) {
            faults.put("rider", "A code such as R1, never a name.");
            return List.of();
        }
        return List.of(new Rider(code, quantity("mass", QuantityKind.MASS, new Interval(30, 250))));
    }

    /// `T1 tester, M1 mechanic`: codes, each with the part they have.
    private List<CrewMember> crew() {
        var crew = new ArrayList<CrewMember>();
        for (String member : typed.get("crew").split(",")) {
            String[] words = member.strip().split("\\s+", 2);
            if (words[0].isEmpty()) {
                continue;
            }
            if (!CrewCode.isOne(words[0])) {
                faults.put("crew", "Codes and parts, as in: T1 tester, M1 mechanic.");
            } else {
                crew.add(new CrewMember(words[0], words.length > 1 ? words[1] : ""));
            }
        }
        return crew;
    }

    private Conditions conditions() {
        return new Conditions(
                quantity("airTemperature", QuantityKind.TEMPERATURE, new Interval(230, 330)),
                quantity("pressure", QuantityKind.PRESSURE, new Interval(50_000, 110_000)),
                quantity("relativeHumidity", QuantityKind.RATIO, new Interval(0, 1)),
                quantity("windSpeed", QuantityKind.SPEED, new Interval(0, 40)),
                typed.get("windFrom"),
                typed.get("surface"),
                quantity("stateOfCharge", QuantityKind.RATIO, new Interval(0, 1)),
                quantity("batteryTemperature", QuantityKind.TEMPERATURE, new Interval(230, 340)));
    }

    private Configuration configuration() {
        var tyre = new Interval(20_000, 1_200_000);
        return new Configuration(
                typed.get("firmware"),
                typed.get("battery"),
                typed.get("tyres"),
                quantity("tyrePressureFront", QuantityKind.PRESSURE, tyre),
                quantity("tyrePressureRear", QuantityKind.PRESSURE, tyre),
                List.of());
    }

    /// The unit that a bare number of a field is in.
    ///
    /// Shape: the air's pressure in kilopascal in both systems; everything else in the crew's unit.
    public static Unit bareUnit(String field, QuantityKind kind, UnitSystem system) {
        return field.equals("pressure") ? Unit.KILOPASCAL : kind.shown(system);
    }

    private OptionalDouble quantity(String field, QuantityKind kind, Interval plausible) {
        String text = typed.get(field);
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        return switch (QuantityText.parse(text, kind, bareUnit(field, kind, system))) {
            case Parsed.Value value when plausible.contains(value.si()) -> OptionalDouble.of(value.si());
            case Parsed.Value _ -> {
                faults.put(field, "“" + text + "” lies outside all that is possible here; is the unit right?");
                yield OptionalDouble.empty();
            }
            case Parsed.Fault(String message, String remedy) -> {
                faults.put(field, message + "; " + remedy + ".");
                yield OptionalDouble.empty();
            }
        };
    }
}
