package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.desk.web.edit.Typed;
import org.measuredmile.desk.web.edit.TypedReading;
import org.measuredmile.publication.chart.Gauge;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.ReadingPrinter;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.FrameReading;
import org.measuredmile.trial.Limit;
import org.measuredmile.trial.ReadingSpec;
import org.measuredmile.trial.VariantKey;

/// Says at once whether what is typed lies inside the limits that the trial declares.
final class Telling {
    private final Printing printing;
    private final Declaration trial;
    private final Typed typed;
    private final TypedReading written;

    Telling(Printing printing, Declaration trial, TestDay day, Typed typed) {
        this.printing = printing;
        this.trial = trial;
        this.typed = typed;
        this.written = new TypedReading(trial, day, printing.system());
    }

    /// The variant as chosen so far; a key without a usable value is left out.
    Variant variant() {
        var variant = Variant.NONE;
        for (VariantKey key : trial.variants()) {
            String value = typed.getOr("variant." + key.name(), key.usual());
            if (!value.isEmpty() && key.admits(value)) {
                variant = variant.with(key.name(), value);
            }
        }
        return variant;
    }

    SheetView.Told told() {
        var gauges = new ArrayList<String>();
        var outside = new ArrayList<String>();
        var inside = new ArrayList<String>();
        for (Sheets.Watched watched : watched()) {
            String text = typed.get("reading." + watched.spec().name());
            Optional<Double> value = written.si(watched.spec(), text);
            gauges.add(gauge(watched, value));
            value.ifPresent(si -> {
                boolean holds = watched.limit().allowed().contains(si);
                (holds ? inside : outside).add(sentence(watched, si, holds));
            });
        }
        List<String> frames = frames();
        if (!outside.isEmpty()) {
            return new SheetView.Told(
                    true, true, gauges, frames, outside.getFirst(), "This run will be shown and won't count.");
        }
        return inside.isEmpty()
                ? new SheetView.Told(false, false, gauges, frames, "", "")
                : new SheetView.Told(true, false, gauges, frames, inside.getFirst(), "This run can count.");
    }

    /// What each time told by frames comes to, or why it comes to none.
    private List<String> frames() {
        var frames = new ArrayList<String>();
        for (ReadingSpec spec : trial.readings()) {
            String text = typed.get(Sheets.field(spec));
            if (spec.kind() == QuantityKind.TIME && FrameReading.isMeant(text)) {
                String fault = written.fault(spec, text);
                frames.add(
                        fault.isEmpty()
                                ? Printing.capital(spec.title()) + ": " + text + " is "
                                        + written.secondsOfFrames(spec, text) + "."
                                : fault);
            }
        }
        return frames;
    }

    private List<Sheets.Watched> watched() {
        Variant chosen = variant();
        var watched = new ArrayList<Sheets.Watched>();
        for (Limit limit : trial.limits()) {
            boolean decides = limit.broken() == Limit.Broken.RUN_DOES_NOT_COUNT && chosen.covers(limit.when());
            Optional<ReadingSpec> spec = trial.reading(limit.reading())
                    .filter(one -> one.scope() == ReadingSpec.Scope.RUN && chosen.covers(one.when()));
            if (decides && spec.isPresent()) {
                watched.add(new Sheets.Watched(limit, spec.get()));
            }
        }
        return watched;
    }

    private String gauge(Sheets.Watched watched, Optional<Double> value) {
        return new Gauge(
                        printing.scale(watched.spec().kind()),
                        watched.limit().title(),
                        watched.limit().allowed(),
                        value.map(OptionalDouble::of).orElse(OptionalDouble.empty()))
                .svg();
    }

    private String sentence(Sheets.Watched watched, double si, boolean holds) {
        var unit = watched.spec().kind().shown(printing.system());
        var allowed = watched.limit().allowed();
        String window = QuantityPrinter.in(unit, allowed.low(), 2).value() + " to "
                + QuantityPrinter.in(unit, allowed.high(), 2).text();
        String value =
                watched.limit().title() + " " + QuantityPrinter.in(unit, si, 2).text();
        return (holds ? "Inside: " : "Outside: ") + value + "; allowed is " + window + ".";
    }

    /// What a typed value is in the other system; empty when it cannot be read or is the same there.
    String other(ReadingSpec spec, String text) {
        String frames = written.secondsOfFrames(spec, text);
        return frames.isEmpty()
                ? written.si(spec, text).map(si -> other(spec.kind(), si)).orElse("")
                : frames;
    }

    private String other(QuantityKind kind, double si) {
        UnitSystem system = printing.system();
        if (kind.shown(system) == kind.shown(system.other())) {
            return "";
        }
        if (kind == QuantityKind.LENGTH && system == UnitSystem.METRIC) {
            return ReadingPrinter.feetAndHalfInches(si);
        }
        int decimals = kind == QuantityKind.LENGTH ? 3 : 1;
        return QuantityPrinter.in(kind.shown(system.other()), si, decimals).text();
    }
}
