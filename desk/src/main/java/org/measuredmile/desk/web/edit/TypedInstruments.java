package org.measuredmile.desk.web.edit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.day.FrameRate;
import org.measuredmile.recording.day.Instrument;

/// Instruments as typed, one a row: fields `instrument.N.id`, `.kind`, `.resolution`, `.delay` and `.frameRate`, N
/// from 1; a row with nothing in it is no instrument.
public final class TypedInstruments {
    private static final Pattern ID = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N}._-]{0,31}");
    private static final List<String> FIELDS = List.of("id", "kind", "resolution", "delay", "frameRate");

    private final Typed typed;
    private final UnitSystem system;
    private final Map<String, String> faults;

    /// @param faults where each row's faults go, by field
    public TypedInstruments(Typed typed, UnitSystem system, Map<String, String> faults) {
        this.typed = typed;
        this.system = system;
        this.faults = faults;
    }

    /// The name of a field of a row.
    public static String field(int row, String name) {
        return "instrument." + row + "." + name;
    }

    /// Those of the rows, behind those that are there already.
    public List<Instrument> behind(List<Instrument> known, int rows) {
        var all = new ArrayList<>(known);
        for (int row = 1; row <= rows; row++) {
            int at = row;
            if (FIELDS.stream().anyMatch(name -> !typed.get(field(at, name)).isEmpty())) {
                read(at, all).ifPresent(all::add);
            }
        }
        return List.copyOf(all);
    }

    private Optional<Instrument> read(int row, List<Instrument> before) {
        String id = typed.get(field(row, "id"));
        if (!ID.matcher(id).matches()) {
            faults.put(field(row, "id"), "A short name without blanks, such as tape-1; it stands behind each reading.");
        } else if (before.stream().anyMatch(one -> one.id().equals(id))) {
            faults.put(field(row, "id"), "There is a “" + id + "” already; give this one another name.");
        }
        Optional<Instrument.Kind> kind = Arrays.stream(Instrument.Kind.values())
                .filter(one -> one.id().equals(typed.get(field(row, "kind"))))
                .findFirst();
        if (kind.isEmpty()) {
            faults.put(field(row, "kind"), "What is it?");
            return Optional.empty();
        }
        return Optional.of(new Instrument(
                id,
                kind.get(),
                positive(
                        field(row, "resolution"),
                        kind.get().quantity(),
                        kind.get().quantity().shown(system)),
                Optional.empty(),
                positive(field(row, "delay"), QuantityKind.TIME, Unit.SECOND),
                frameRate(field(row, "frameRate"), kind.get()),
                List.of()));
    }

    private OptionalDouble positive(String field, QuantityKind kind, Unit bare) {
        String text = typed.get(field);
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        return switch (QuantityText.parse(text, kind, bare)) {
            case Parsed.Value value when value.si() > 0 -> OptionalDouble.of(value.si());
            case Parsed.Value _ -> wrong(field, "Above 0, or leave it empty.");
            case Parsed.Fault(String message, String remedy) -> wrong(field, message + "; " + remedy + ".");
        };
    }

    private OptionalDouble wrong(String field, String why) {
        faults.put(field, why);
        return OptionalDouble.empty();
    }

    private Optional<FrameRate> frameRate(String field, Instrument.Kind kind) {
        String text = typed.get(field);
        Optional<FrameRate> rate = FrameRate.parse(text);
        if (!text.isEmpty() && kind != Instrument.Kind.CAMERA) {
            faults.put(field, "Only a camera has frames; leave it empty.");
        } else if (!text.isEmpty() && rate.isEmpty()) {
            faults.put(field, "Frames a second, as 30000/1001, 29.97 or 240; “variable” where it changes.");
        }
        return rate;
    }
}
