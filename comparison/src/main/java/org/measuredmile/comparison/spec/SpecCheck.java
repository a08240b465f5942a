package org.measuredmile.comparison.spec;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.spec.ClaimText.Claimed;
import org.measuredmile.comparison.spec.SpecEntry.Status;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.trial.Better;

/// Works out one line: what measures it, what the bike says, and the status that follows.
final class SpecCheck {
    /// How far from a figure a claim may lie before another unit is thought of, and how near it must then come.
    private static final double FAR = 0.15;

    private static final double NEAR = 0.05;

    private final TestedBike bike;
    private final SpecLine line;
    private final SpecItem item;
    private final List<Finding> findings = new ArrayList<>();

    SpecCheck(TestedBike bike, SpecLine line) {
        this.bike = bike;
        this.line = line;
        this.item = SpecItems.named(line.item());
    }

    SpecEntry entry() {
        Optional<ClaimText> claim = item.isWords() ? Optional.empty() : Optional.of(ClaimText.read(line, item.kind()));
        Optional<Claimed> claimed = claim.filter(Claimed.class::isInstance).map(Claimed.class::cast);
        claim.ifPresent(this::note);
        Map<String, String> conditions = claimed.map(Claimed::conditions)
                .orElseGet(() -> ClaimConditions.read(line.conditions(), ClaimText.at(line, "conditions"))
                        .values());
        // A payload with the rider in it is another quantity than the one that is weighed.
        Optional<TestedBike.Result> measured = item.measure()
                .filter(_ -> !conditions.getOrDefault("rider", "").equals("included"))
                .flatMap(measure -> measure.of(bike, conditions));
        claimed.ifPresent(one -> {
            plausible(one);
            measured.ifPresent(result -> unitSlip(one, result));
        });
        Optional<String> against = claimed.flatMap(one -> measured.flatMap(result -> excluded(one, result)))
                .or(() -> claimed.flatMap(this::seenOtherwise))
                .or(this::otherTyre);
        Status status = against.isPresent() ? Status.CONTRADICTED : status(measured.isPresent());
        return new SpecEntry(
                item,
                line,
                claim,
                measured,
                status,
                against.orElseGet(() -> why(status, measured)),
                derived(),
                findings);
    }

    private void note(ClaimText claim) {
        switch (claim) {
            case Claimed read -> findings.addAll(read.notes());
            case ClaimText.Unreadable unreadable -> findings.add(unreadable.finding());
            case ClaimText.Unsaid _ -> {}
        }
    }

    private Status status(boolean isMeasured) {
        if (isMeasured) {
            return Status.MEASURED;
        }
        if (!line.seen().isBlank()) {
            return Status.SEEN;
        }
        boolean couldBeChecked = item.measure().isPresent() || !item.marking().isEmpty();
        return couldBeChecked ? Status.NOT_CHECKED : Status.CLAIMED;
    }

    private String why(Status status, Optional<TestedBike.Result> measured) {
        return switch (status) {
            case MEASURED -> "measured on " + measured.orElseThrow().date();
            case SEEN -> line.claimed().isBlank() ? "the bike says so" : "read on the bike";
            case CLAIMED -> "no trial and no mark speaks of it";
            case NOT_CHECKED -> item.measure().isPresent() ? "no figure of it yet" : "not read on the bike yet";
            case CONTRADICTED -> throw new IllegalStateException("a contradiction has its own words");
        };
    }

    /// Whether the any-day interval leaves the claim out in the direction that matters, in words.
    private Optional<String> excluded(Claimed claim, TestedBike.Result result) {
        Interval measured = result.figure().anyDay().interval95();
        Interval wanted = claim.wanted().admitted();
        double rounded = item.better() == Better.NEITHER ? claim.stepSi() / 2 : 0;
        boolean isMore = measured.low() > wanted.high() + rounded;
        boolean isLess = measured.high() < wanted.low() - rounded;
        boolean matters = switch (item.better()) {
            case LESS -> isMore;
            case MORE -> isLess;
            case NEITHER -> isMore || isLess;
        };
        return matters ? Optional.of("measured " + (isMore ? "more" : "less") + " than claimed") : Optional.empty();
    }

    /// Whether what stands on the bike is another value than the claimed one, in words.
    private Optional<String> seenOtherwise(Claimed claim) {
        var mark = new SpecLine(line.item(), line.seen(), "", "", "", "", "", "", "", ClaimText.at(line, "seen"));
        boolean differs = !line.seen().isBlank()
                && ClaimText.read(mark, item.kind()) instanceof Claimed seen
                && !overlaps(claim, seen);
        if (!differs) {
            return Optional.empty();
        }
        findings.add(SpecSlip.SEEN_DIFFERS.at(
                ClaimText.at(line, "seen"), item.words(), line.seen().strip(), ClaimText.words(line)));
        return Optional.of("the bike says otherwise");
    }

    private static boolean overlaps(Claimed claim, Claimed seen) {
        double step = Math.max(claim.stepSi(), seen.stepSi()) / 2;
        Interval one = claim.wanted().admitted();
        Interval other = seen.wanted().admitted();
        return one.low() <= other.high() + step && other.low() <= one.high() + step;
    }

    private Optional<String> otherTyre() {
        if (!item.id().equals("tyres")) {
            return Optional.empty();
        }
        var claimed = TyreSize.read(line.claimed());
        var seen = TyreSize.read(line.seen());
        boolean differs = claimed.isPresent()
                && seen.isPresent()
                && claimed.get().beadSeatMm() != seen.get().beadSeatMm();
        if (!differs) {
            return Optional.empty();
        }
        findings.add(SpecSlip.SEEN_DIFFERS.at(
                ClaimText.at(line, "seen"), item.words(), line.seen().strip(), ClaimText.words(line)));
        return Optional.of("the bike says otherwise");
    }

    /// The way of one turn, where the line names a tyre.
    private String derived() {
        if (!item.id().equals("tyres")) {
            return "";
        }
        String words = TyreSize.read(line.seen()).isPresent() ? line.seen() : line.claimed();
        Optional<TyreSize> size = TyreSize.read(words);
        if (size.isEmpty()) {
            findings.add(SpecSlip.TYRE_NOT_READ.at(ClaimText.at(line, "claimed"), ClaimConditions.quoted(words)));
        }
        return size.map(one -> one.words() + ": about " + SpecText.plain(one.circumferenceM(), Unit.MILLIMETRE)
                        + " a turn, unloaded")
                .orElse("");
    }

    /// A value outside the band of its item, with the unit that would bring it inside.
    private void plausible(Claimed claim) {
        item.band().ifPresent(band -> {
            for (double si : claim.wanted().named()) {
                if (!band.holds(si)) {
                    String slip = UnitSlips.name(si, claim.unit(), item.kind(), band::holds)
                            .map(words -> "; " + words)
                            .orElse("");
                    findings.add(SpecSlip.NOT_PLAUSIBLE.at(
                            ClaimText.at(line, "claimed"),
                            item.words(),
                            SpecText.plain(si, claim.unit()),
                            band.words(),
                            band.source(),
                            slip));
                }
            }
        });
    }

    /// A claim far from what was measured, that another unit would bring near.
    private void unitSlip(Claimed claim, TestedBike.Result result) {
        double measured = result.figure().value();
        for (double si : claim.wanted().named()) {
            boolean isFar = Math.abs(si / measured - 1) > FAR && item.kind() != QuantityKind.DISTANCE;
            if (isFar) {
                UnitSlips.name(si, claim.unit(), item.kind(), other -> Math.abs(other / measured - 1) < NEAR)
                        .ifPresent(words -> findings.add(SpecSlip.UNIT_SLIP.at(
                                ClaimText.at(line, "claimed"),
                                item.words(),
                                SpecText.plain(si, claim.unit()),
                                SpecText.plain(measured, claim.unit()),
                                "measured",
                                words)));
            }
        }
    }
}
