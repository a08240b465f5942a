package org.measuredmile.desk.cli;

import java.util.List;
import java.util.Locale;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.spoken.CameraOffset;
import org.measuredmile.recording.spoken.SpokenAgainstTrace;
import org.measuredmile.recording.spoken.SpokenClip;
import org.measuredmile.recording.spoken.SpokenReading;

/// Shows the numbers said in a clip as text: what each seems to be, and how it compares with a recording's speed.
final class SpokenText {
    private final Shown shown;

    SpokenText(Shown shown) {
        this.shown = shown;
    }

    void print(SpokenClip clip) {
        if (clip.readings().isEmpty()) {
            shown.line("  spoken     no number was said that could be a reading");
            return;
        }
        clip.beside().forEach(this::clock);
        boolean isSet = !clip.found().isEmpty();
        var table = new Table("  said at", "seems to be", "value", "how sure", isSet ? "the trace" : "", "words");
        for (SpokenClip.Line line : clip.lines()) {
            SpokenReading said = line.reading();
            table.row(
                    String.format(Locale.ROOT, "  %.1f s", said.timeS()),
                    said.kind().map(SpokenText::word).orElse("a number"),
                    value(said),
                    said.confidence().words(),
                    line.trace().map(this::trace).orElse(""),
                    "\"" + said.text() + "\"");
        }
        table.lines().forEach(shown::line);
        if (clip.beside().isEmpty()) {
            shown.line("  clock      name a recording of the ride behind the clip, and the speeds said set its clock");
        }
    }

    /// A kind of quantity as a word.
    private static String word(QuantityKind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private void clock(SpokenClip.Beside beside) {
        String against = "  clock      against " + beside.recording() + " ("
                + beside.speed().kind().title() + "): ";
        switch (beside.offset()) {
            case CameraOffset.Found found ->
                shown.line(against
                        + String.format(
                                Locale.ROOT,
                                "%+.2f s, 95 %% from %+.2f to %+.2f s; %d of %d speeds said agree",
                                found.offsetS(),
                                found.interval95S().low(),
                                found.interval95S().high(),
                                found.agreeing(),
                                found.said()));
            case CameraOffset.NotFound(String code, String message, String remedy, List<Double> _) ->
                shown.line(against + "not set: " + message + "; " + remedy + " [" + code + "]");
        }
    }

    /// The value in the unit it was said in, and in that of the system that stands first where that is another.
    private String value(SpokenReading said) {
        if (said.kind().isEmpty()) {
            return said.typed();
        }
        Unit first = said.kind().get().shown(shown.units());
        if (said.kind().get() == QuantityKind.TIME
                || said.unit().filter(first::equals).isPresent()) {
            return said.typed();
        }
        return said.typed() + " = " + QuantityPrinter.in(first, said.value(), 2).text();
    }

    private String trace(SpokenAgainstTrace one) {
        if (one.traceMps().isEmpty()) {
            return one.agreement().words();
        }
        Unit unit = QuantityKind.SPEED.shown(shown.units());
        String trace = QuantityPrinter.in(unit, one.traceMps().getAsDouble(), 1).text();
        return one.agreement() == SpokenAgainstTrace.Agreement.DISAGREES
                ? "DISAGREES: " + trace + ", said is "
                        + String.format(
                                Locale.ROOT,
                                "%+.1f",
                                unit.differenceFromSi(one.differenceMps().orElse(0)))
                : one.agreement().words() + ": " + trace;
    }
}
