package org.measuredmile.recording.day;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoField;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Place;

/// Reads the text of one field of a file that people write; what is wrong goes to the faults, and reads as absent.
final class FieldText {
    private static final DateTimeFormatter TIME = new DateTimeFormatterBuilder()
            .appendPattern("H:mm[:ss")
            .appendFraction(ChronoField.NANO_OF_SECOND, 0, 9, true)
            .appendPattern("]")
            .toFormatter(Locale.ROOT)
            .withResolverStyle(ResolverStyle.STRICT);

    private FieldText() {}

    /// Where a field stands and where its faults go.
    record At(Place place, Faults faults) {
        void add(DayFault fault, Object... what) {
            faults.add(fault, place, what);
        }
    }

    /// The date and zone that a time without them is read in.
    record Day(Optional<LocalDate> date, ZoneId zone) {}

    static OptionalDouble quantity(String text, QuantityKind kind, Optional<Unit> bare, At at) {
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        Parsed parsed = bare.isPresent() ? QuantityText.parse(text, kind, bare.get()) : QuantityText.parse(text, kind);
        return switch (parsed) {
            case Parsed.Value value -> OptionalDouble.of(value.si());
            case Parsed.Fault(var message, var remedy) -> {
                at.add(DayFault.NOT_A_QUANTITY, message, remedy);
                yield OptionalDouble.empty();
            }
        };
    }

    /// A number that has no unit, with a decimal point or comma.
    static OptionalDouble plainNumber(String text, At at) {
        return quantity(text, QuantityKind.RATIO, Optional.of(Unit.ONE), at);
    }

    static Optional<LocalDate> date(String text, At at) {
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(LocalDate.parse(text, DateTimeFormatter.ISO_LOCAL_DATE));
        } catch (DateTimeException _) {
            at.add(DayFault.NOT_A_DATE, Faults.quoted(text));
            return Optional.empty();
        }
    }

    /// An instant from `10:27:41` on the test day, from a date with a time, or from one with its offset.
    static Optional<Instant> time(String text, Day day, At at) {
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Optional<Instant> time = withOffset(text).or(() -> local(text, day, at));
        time.ifPresent(one -> compare(text, one, day, at));
        return time;
    }

    private static Optional<Instant> withOffset(String text) {
        try {
            return Optional.of(OffsetDateTime.parse(text.replace(' ', 'T'), DateTimeFormatter.ISO_OFFSET_DATE_TIME)
                    .toInstant());
        } catch (DateTimeException _) {
            return Optional.empty();
        }
    }

    private static Optional<Instant> local(String text, Day day, At at) {
        LocalDateTime local;
        try {
            local = text.contains("-")
                    ? LocalDateTime.parse(text.replace(' ', 'T'), DateTimeFormatter.ISO_LOCAL_DATE_TIME)
                    : LocalTime.parse(text, TIME).atDate(day.date().orElse(LocalDate.EPOCH));
        } catch (DateTimeException _) {
            at.add(DayFault.NOT_A_TIME, Faults.quoted(text));
            return Optional.empty();
        }
        if (day.date().isEmpty() && !text.contains("-")) {
            return Optional.empty();
        }
        List<ZoneOffset> offsets = day.zone().getRules().getValidOffsets(local);
        if (offsets.isEmpty()) {
            at.add(DayFault.TIME_SKIPPED, Faults.quoted(text), day.zone().getId());
            return Optional.empty();
        }
        if (offsets.size() > 1) {
            at.add(DayFault.TIME_TWICE, Faults.quoted(text), day.zone().getId());
        }
        return Optional.of(local.toInstant(offsets.getFirst()));
    }

    private static void compare(String text, Instant time, Day day, At at) {
        LocalDate on = time.atZone(day.zone()).toLocalDate();
        if (day.date().isPresent() && !day.date().get().equals(on)) {
            at.add(
                    DayFault.TIME_OF_OTHER_DAY,
                    Faults.quoted(text),
                    on,
                    day.date().get());
        }
    }

    /// The variant that a list of `key=value` names; nothing, and a fault, when it is no such list.
    static Optional<Variant> variant(String text, At at) {
        Variant variant = Variant.NONE;
        for (String part : text.strip().split("[\\s,;]+")) {
            if (part.isEmpty()) {
                continue;
            }
            String[] sides = part.split("=", -1);
            if (sides.length != 2
                    || sides[0].isEmpty()
                    || sides[1].isEmpty()
                    || variant.get(sides[0]).isPresent()) {
                at.add(DayFault.NOT_A_VARIANT, Faults.quoted(text));
                return Optional.empty();
            }
            variant = variant.with(sides[0], sides[1]);
        }
        return Optional.of(variant);
    }
}
