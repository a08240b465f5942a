package org.measuredmile.trial.markings;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.Handbook;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.ReadingSpec;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.RunScreen;
import org.measuredmile.trial.Trial;
import org.measuredmile.trial.TrialInput;

/// What the bike itself says, read off it and photographed: readings only, no figure.
public final class Markings implements Trial {
    private static final String LOW = "tyre-pressure-low";
    private static final String HIGH = "tyre-pressure-high";
    private static final Declaration DECLARATION = declare();

    private static Declaration declare() {
        var builder = Declaration.of("markings", 1, "Markings")
                .purpose("What the bike itself says of its class, its motor, its battery and its tyres.")
                .caution("Marks are read and photographed; nothing is certified by that. Whether a mark is earned, the"
                        + " body that gives it can tell.")
                .caution("The battery stays closed and dry; one that is dented, swollen or wet is left alone and shown"
                        + " to somebody qualified.")
                .readOnceADay()
                .voidWhen("other-bike", "read off another bike");
        words(builder, "class-label", "class label", "as it stands: Class 2, EPAC, S-Pedelec");
        number(builder, "top-speed", "top assisted speed", QuantityKind.SPEED, new Range(1, 25, Unit.METRE_PER_SECOND));
        number(builder, "motor-power", "motor power", QuantityKind.POWER, new Range(50, 5000, Unit.WATT));
        number(builder, "battery-voltage", "battery voltage", QuantityKind.VOLTAGE, new Range(10, 120, Unit.VOLT));
        number(builder, "battery-charge", "battery charge", QuantityKind.CHARGE, new Range(1, 150, Unit.AMPERE_HOUR));
        number(builder, "battery-energy", "battery energy", QuantityKind.ENERGY, new Range(20, 8000, Unit.WATT_HOUR));
        words(builder, "tyres", "tyre size", "from the sidewall: 57-584");
        number(builder, LOW, "lowest tyre pressure", QuantityKind.PRESSURE, new Range(30, 1200, Unit.KILOPASCAL));
        number(builder, HIGH, "highest tyre pressure", QuantityKind.PRESSURE, new Range(30, 1200, Unit.KILOPASCAL));
        number(builder, "permitted-total", "permitted total", QuantityKind.MASS, new Range(40, 600, Unit.KILOGRAM));
        words(builder, "certification-mark", "certification mark", "the mark and what it is on");
        words(builder, "certification-number", "certification number", "as it stands under the mark");
        words(builder, "photo", "photos", "file names, parted by semicolons");
        return builder.handbook(handbook());
    }

    private static Handbook handbook() {
        return new Handbook(
                "What stands on the bike, its battery and its tyres, word for word.",
                "none: what is read is written down as it stands",
                List.of(
                        "Read each mark, write it as it stands, unit and all, and photograph it.",
                        "Write the pictures' file names under photos; the note of a reading may name its own picture.",
                        "Leave empty what the bike does not say and what cannot be read.",
                        "The spec sheet holds each mark against the claim and against what was measured, and works out"
                                + " volts × ampere-hours."),
                List.of("Common practice, no source: which marks are read. What a mark must hold, the law of the market"
                        + " says."),
                "A plate of 48 V, 14 Ah and 672 Wh agrees with itself: 48 × 14 = 672.",
                "A mark is what its maker says; that it was read says nothing on whether it is true.");
    }

    /// The values that such a mark can hold at all.
    private record Range(double low, double high, Unit unit) {}

    private static void words(Declaration.Builder builder, String name, String title, String hint) {
        builder.reading(ReadingSpec.ofDay(name, title, QuantityKind.WORD).hint(hint));
    }

    private static void number(
            Declaration.Builder builder, String name, String title, QuantityKind kind, Range possible) {
        builder.reading(ReadingSpec.ofDay(name, title, kind)
                .plausible(possible.unit().toSi(possible.low()), possible.unit().toSi(possible.high())));
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome reduce(TrialInput input) {
        var screen = new RunScreen(DECLARATION, input);
        var findings = new ArrayList<>(screen.findings());
        var runs = input.runs().stream()
                .map(run -> RunResult.of(run, reason(screen, run), List.of()))
                .toList();
        boolean anyRead = DECLARATION.readings().stream()
                .anyMatch(spec -> input.readings().ofDay(spec.name()).isPresent());
        if (anyRead) {
            findings.add(Finding.note(
                    "nothing-certified", Place.NOWHERE, "marks were read off the bike; nothing was certified"));
            findings.addAll(pressures(input));
        }
        if (anyRead && input.readings().ofDay("photo").isEmpty()) {
            findings.add(Finding.warning(
                    "marks-without-photo",
                    Place.NOWHERE,
                    "no photo of the marks is named",
                    "photograph them and write the file names under photos"));
        }
        return findings.isEmpty() && runs.isEmpty() ? Outcome.NOTHING : new Outcome(List.of(), runs, findings);
    }

    private static String reason(RunScreen screen, Run run) {
        String reason = screen.reasonNotToCount(run);
        return reason.isEmpty() ? "markings are read once a day, without a run" : reason;
    }

    private static List<Finding> pressures(TrialInput input) {
        var low = input.readings().ofDay(LOW);
        var high = input.readings().ofDay(HIGH);
        if (low.isEmpty() || high.isEmpty() || low.get().si() <= high.get().si()) {
            return List.of();
        }
        return List.of(Finding.warning(
                "pressures-reversed",
                low.get().reading().place(),
                "the lowest tyre pressure, " + low.get().reading().written() + ", is above the highest, "
                        + high.get().reading().written(),
                "look at the sidewall again"));
    }
}
