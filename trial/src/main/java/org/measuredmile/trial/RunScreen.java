package org.measuredmile.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.PreRideCheck;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.ResolvedReadings.Value;

/// Whether a run counts, from what was written down alone and before its result is looked at: voided at the track, the
/// pre-ride check, missing or impossible readings, and the limits that the trial declares.
public final class RunScreen {
    private final Declaration declaration;
    private final TrialInput input;

    public RunScreen(Declaration declaration, TrialInput input) {
        this.declaration = declaration;
        this.input = input;
    }

    /// Why a run does not count; empty text when it does. Each reason gives limit and value where there is one.
    public String reasonNotToCount(Run run) {
        if (run.state() == Run.State.VOID) {
            return "void: " + voidWords(run);
        }
        if (declaration.needsPreRideCheck() && !isChecked()) {
            return "no pre-ride check ticked by a second person, without which no run of this trial counts";
        }
        return variantFault(run)
                .or(() -> readingFault(run))
                .or(() -> missingReading(run))
                .or(() -> brokenLimit(run))
                .orElse("");
    }

    /// What is to be said of the runs besides: causes nobody declared, and each fault of a reading with its place.
    public List<Finding> findings() {
        var findings = new ArrayList<Finding>();
        if (declaration.needsPreRideCheck() && !isChecked() && !input.runs().isEmpty()) {
            findings.add(Finding.refused(
                    "no-pre-ride-check",
                    new Place("day.yaml", "checks.preRide"),
                    "the pre-ride check is not ticked by a second person",
                    "have a second person check the bike and tick it; then the runs count"));
        }
        findings.addAll(input.readings().faultsOf(""));
        for (var run : input.runs()) {
            findings.addAll(input.readings().faultsOf(run.id()));
            if (run.state() == Run.State.VOID && !isDeclaredCause(run.reason())) {
                findings.add(Finding.warning(
                        "void-cause-unknown",
                        run.place(),
                        "run " + run.id() + " is void for \"" + run.reason() + "\", which is no cause of this trial",
                        "write one of " + causes() + ", or \"other:\" and the reason"));
            }
        }
        findings.addAll(input.windows().findings());
        return findings;
    }

    private boolean isChecked() {
        return input.day().preRideCheck().filter(PreRideCheck::isTicked).isPresent();
    }

    private String causes() {
        return String.join(", ", declaration.causes().stream().map(Cause::code).toList());
    }

    private boolean isDeclaredCause(String reason) {
        return reason.startsWith("other:")
                || declaration.causes().stream().anyMatch(cause -> cause.code().equals(reason));
    }

    private String voidWords(Run run) {
        if (run.reason().isBlank()) {
            return "no cause was written";
        }
        return declaration.causes().stream()
                .filter(cause -> cause.code().equals(run.reason()))
                .map(Cause::words)
                .findFirst()
                .orElse(run.reason());
    }

    private Optional<String> variantFault(Run run) {
        for (var entry : run.variant().values().entrySet()) {
            var key = declaration.variant(entry.getKey());
            if (key.isPresent() && !key.get().admits(entry.getValue())) {
                var allowed = key.get().values().stream()
                        .map(VariantKey.Choice::value)
                        .toList();
                return Optional.of("variant " + entry.getKey() + "=" + entry.getValue() + " is none of "
                        + String.join(", ", allowed));
            }
        }
        for (var key : declaration.variants()) {
            if (key.asked()
                    && key.usual().isEmpty()
                    && !key.values().isEmpty()
                    && run.variant().get(key.name()).isEmpty()) {
                return Optional.of("its variant does not say which " + key.title());
            }
        }
        return Optional.empty();
    }

    private Optional<String> readingFault(Run run) {
        return input.readings().faultsOf(run.id()).stream()
                .map(Finding::message)
                .findFirst();
    }

    private Optional<String> missingReading(Run run) {
        for (var spec : declaration.readings()) {
            boolean applies = spec.required() && run.variant().covers(spec.when());
            if (applies && input.readings().of(run.id(), spec.name()).isEmpty()) {
                return Optional.of("no " + spec.title() + " was written down");
            }
        }
        return Optional.empty();
    }

    private Optional<String> brokenLimit(Run run) {
        for (var limit : declaration.limits()) {
            if (limit.broken() == Limit.Broken.RUN_DOES_NOT_COUNT
                    && run.variant().covers(limit.when())) {
                var value = input.readings().of(run.id(), limit.reading());
                if (value.isPresent() && !limit.allowed().contains(value.get().si())) {
                    return Optional.of(outside(limit, value.get()));
                }
            }
        }
        return Optional.empty();
    }

    /// Where a value lies against a limit, in words, in the unit that the value was written in.
    String outside(Limit limit, Value value) {
        var unit = writtenUnit(limit, value);
        return limit.title() + " " + ReadingResolver.plain(unit.fromSi(value.si())) + " " + unit.symbol()
                + " is outside "
                + ReadingResolver.plain(unit.fromSi(limit.allowed().low())) + " to "
                + ReadingResolver.plain(unit.fromSi(limit.allowed().high())) + " " + unit.symbol();
    }

    private Unit writtenUnit(Limit limit, Value value) {
        var kind = declaration.reading(limit.reading()).orElseThrow().kind();
        return QuantityText.parse(value.reading().written(), kind) instanceof Parsed.Value parsed
                ? parsed.unit()
                : kind.si();
    }

    /// The run's variant with the usual value of every key it does not give.
    static Variant completed(Declaration declaration, Variant variant) {
        var complete = variant;
        for (var key : declaration.variants()) {
            if (complete.get(key.name()).isEmpty() && !key.usual().isEmpty()) {
                complete = complete.with(key.name(), key.usual());
            }
        }
        return complete;
    }
}
