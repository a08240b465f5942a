package org.measuredmile.trial.climb;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.roadload.Ride;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.UsedLoad;

/// The climb as everything but the climb has it: the force of the standing starts, masses, road load and course.
///
/// It is a check of all of them together: where the ridden time lies outside, one of them is not what was written, or
/// the drive does not push on a long hill as it does at a start. No watch and no trace of the climb enter it but for
/// the speed at the first gate.
final class ForetoldClimb {
    private static final String NAME = "climb.foretold-time";

    private final TrialInput input;
    private final ClimbGroup group;
    private final ClimbPower power;
    private final ClimbBasis basis;

    /// A foretold time with what became of it.
    record Foretold(Figure figure, Finding finding) {}

    private ForetoldClimb(TrialInput input, ClimbGroup group, ClimbPower power) {
        this.input = input;
        this.group = group;
        this.power = power;
        this.basis = new ClimbBasis(input, group, power);
    }

    /// Of every drive and hill whose standing starts told force and power; nothing where the bike would not get up.
    static List<Foretold> of(TrialInput input, List<ClimbGroup> groups) {
        var all = new ArrayList<Foretold>();
        for (var group : groups) {
            if (!group.counted().isEmpty()) {
                group.power(input)
                        .map(power -> new ForetoldClimb(input, group, power))
                        .filter(one -> one.basis.isDriveKnown())
                        .flatMap(ForetoldClimb::foretold)
                        .ifPresent(all::add);
            }
        }
        return all;
    }

    private Optional<Foretold> foretold() {
        return timeS(ClimbBasis.NOTHING).map(seconds -> {
            var parts = basis.contributions((move, _) -> moved(seconds, move)).stream()
                    .map(part -> part.through(seconds))
                    .toList();
            var figure = figure(seconds, new Budget(parts));
            return new Foretold(figure, finding(figure));
        });
    }

    private Optional<Double> timeS(ClimbBasis.Move move) {
        Ride ride = basis.model(move).ride(basis.launchN(move));
        return ride.finished() ? Optional.of(ride.timeS()) : Optional.empty();
    }

    /// What a move does to the time, relative to it; a hill no longer climbed counts as the whole time.
    private double moved(double timeS, ClimbBasis.Move move) {
        return timeS(move).map(there -> there / timeS - 1).orElse(1.0);
    }

    /// The time of any day: what is open of the wind on this one's hill is no part of it, what was written is.
    private Budget anyDay(double timeS, Budget thisDay) {
        var kept = new ArrayList<Contribution>();
        for (var part : thisDay.contributions()) {
            if (!part.input().equals(ClimbBasis.WIND)) {
                kept.add(part);
            }
        }
        double openMps = power.wind().standardUncertainty();
        double days = ClimbRules.WIND_OF_DAYS_SD;
        double writtenMps = Math.sqrt(Math.max(0, days * days - openMps * openMps));
        var here = new DayAnswers.Weighted(basis.model(ClimbBasis.NOTHING), basis.launchN(ClimbBasis.NOTHING), 1);
        double betweenS = DayAnswers.of(List.of(here))
                .map(answers -> answers.time().betweenDays(writtenMps) * timeS)
                .orElse(ClimbRules.TIME.betweenDaysAt(timeS));
        kept.add(new Contribution(
                "between days", Contribution.Evaluation.B, betweenS, ClimbRules.TIME.dayDegreesOfFreedom(), ""));
        return new Budget(kept);
    }

    private Figure figure(double timeS, Budget budget) {
        var anyDay = anyDay(timeS, budget);
        var assumed = new ArrayList<>(UsedLoad.of(input).assumed());
        assumed.addAll(power.road().assumed());
        assumed.add("the drive pushes up the hill as it does at a start");
        assumed.addAll(basis.slopeAssumed());
        return new Figure(
                new FigureKey(NAME, group.variant()),
                QuantityKind.TIME,
                Climb.DECLARATION.id(),
                Climb.DECLARATION.version(),
                timeS,
                budget.around(timeS),
                anyDay.around(timeS),
                List.of(),
                anyDay.byWeight(),
                List.of(),
                assumed,
                input.used().values().stream().map(Figure::asUsed).toList(),
                List.of(),
                List.of());
    }

    private Finding finding(Figure figure) {
        double riddenS = group.timeS();
        double runsSd = ClimbRules.TIME.betweenRunsAt(riddenS)
                / Math.sqrt(group.counted().size());
        double gap = riddenS - figure.value();
        double most =
                ClimbRules.DISAGREE_BEYOND * StrictMath.hypot(figure.thisDay().standard(), runsSd);
        String words = group.drive()
                + (group.hill().id().isEmpty() ? "" : " on " + group.hill().id())
                + ": ridden in " + ClimbWords.seconds(riddenS)
                + "; starts, masses and road load alone foretell " + ClimbWords.seconds(figure.value())
                + ", apart by at most " + ClimbWords.seconds(most);
        return Math.abs(gap) <= most
                ? Finding.note("foretold", Place.NOWHERE, words)
                : Finding.warning(
                        "foretold-differs",
                        Place.NOWHERE,
                        words,
                        "look at the rise, the masses and the drive's state on the hill: one is not as written");
    }
}
