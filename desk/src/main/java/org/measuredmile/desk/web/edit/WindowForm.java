package org.measuredmile.desk.web.edit;

import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Window;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.RunResult.Stretch;

/// The ends of a run, or the time to split it at, as a plot or a person sent them.
///
/// Shape: fields are `from` and `to`, or `at`: seconds of the recording, with a point or a comma or as `1:08.3`;
/// `recording` where the run lies in none yet or is to lie in another; `who`; `why` in free words.
public final class WindowForm {
    private final DayReduction.Result.Reduced reduced;
    private final Optional<Stretch> known;
    private final Typed typed;
    private final Map<String, String> faults = new TreeMap<>();

    public WindowForm(DayReduction.Result.Reduced reduced, RunResult run, Typed typed) {
        this(reduced, Windows.of(reduced.day(), run), typed);
    }

    /// The form of a run that is not there yet.
    public WindowForm(DayReduction.Result.Reduced reduced, Typed typed) {
        this(reduced, Optional.empty(), typed);
    }

    private WindowForm(DayReduction.Result.Reduced reduced, Optional<Stretch> known, Typed typed) {
        this.reduced = reduced;
        this.known = known;
        this.typed = typed;
        if (!CrewCode.isOne(typed.get("who"))) {
            faults.put("who", "Who says so? A crew code such as T1.");
        }
    }

    /// What is wrong so far, by field.
    public Map<String, String> faults() {
        return Collections.unmodifiableMap(faults);
    }

    /// The ends that were sent; nothing where there is a fault in any field.
    public Optional<Stretch> ends() {
        var recording = recording();
        var fromS = time("from");
        var toS = time("to");
        if (recording.isEmpty() || fromS.isEmpty() || toS.isEmpty()) {
            return Optional.empty();
        }
        double lastS = last(recording.get());
        if (fromS.get() >= lastS) {
            faults.put("from", "The recording ends at " + Windows.seconds(lastS) + "; begin before that.");
        } else if (toS.get() > lastS + 1) {
            faults.put("to", "The recording ends at " + Windows.seconds(lastS) + "; end there or before.");
        } else if (toS.get() - fromS.get() < 0.001) {
            faults.put("to", "The run ends before it begins; the end has to be later.");
        } else {
            Window.fault(fromS.get(), toS.get()).ifPresent(why -> faults.put("to", "Not a run: " + why + "."));
        }
        return faults.isEmpty()
                ? Optional.of(new Stretch(recording.get().name(), fromS.get(), toS.get()))
                : Optional.empty();
    }

    /// The time to split the run at; nothing where there is a fault in any field.
    public Optional<Double> cut() {
        var whole = known;
        var atS = time("at");
        if (whole.isEmpty()) {
            faults.put("at", "No recording holds this run; set its ends first.");
        } else if (atS.isPresent()
                && (atS.get() < whole.get().fromS() + 0.001
                        || atS.get() > whole.get().toS() - 0.001)) {
            faults.put(
                    "at",
                    "The run lasts from " + Windows.seconds(whole.get().fromS()) + " to "
                            + Windows.seconds(whole.get().toS()) + "; split it between them.");
        }
        return faults.isEmpty() ? atS : Optional.empty();
    }

    private Optional<Double> time(String field) {
        String text = typed.get(field);
        if (text.isEmpty()) {
            faults.put(field, "A time is needed, in seconds of the recording.");
            return Optional.empty();
        }
        return switch (QuantityText.parse(text, QuantityKind.TIME, Unit.SECOND)) {
            case Parsed.Value value when value.si() >= 0 && Double.isFinite(value.si()) -> Optional.of(value.si());
            case Parsed.Value _ -> wrong(field, "The recording begins at 0 s; “" + text + "” is before it.");
            case Parsed.Fault(String message, String remedy) -> wrong(field, message + "; " + remedy + ".");
        };
    }

    private Optional<Double> wrong(String field, String why) {
        faults.put(field, why);
        return Optional.empty();
    }

    private Optional<Recording> recording() {
        String name = typed.getOr("recording", known.map(Stretch::recording).orElse(""));
        if (reduced.recordings().get(name) instanceof Decoding.Decoded(Recording recording)
                && recording.timesS().length > 1) {
            return Optional.of(recording);
        }
        faults.put(
                "recording",
                name.isEmpty()
                        ? "No recording holds this run yet; say which one does."
                        : "“" + name + "” is no recording of this day that could be read.");
        return Optional.empty();
    }

    private static double last(Recording recording) {
        return recording.timesS()[recording.timesS().length - 1];
    }
}
