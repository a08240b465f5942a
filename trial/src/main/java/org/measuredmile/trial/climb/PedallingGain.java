package org.measuredmile.trial.climb;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.FigureKey;

/// What pedalling gained over the throttle alone on one hill, and whether that is a difference at all.
///
/// What both times share (the hill's length, the speed's scale, a watch holder's reaction) cancels.
/// Unit: seconds, positive where pedalling was quicker.
record PedallingGain(Figure figure, Finding finding) {
    private static final String BETWEEN_DAYS = "between days";

    /// `measured` are the day's figures of single drives.
    static List<PedallingGain> of(ClimbFigures figures, List<Figure> measured) {
        var all = new ArrayList<PedallingGain>();
        for (var pedal : figures.groups()) {
            figures.groups().stream()
                    .filter(other -> other.drive().equals("throttle")
                            && pedal.drive().equals("pedal")
                            && other.hill().id().equals(pedal.hill().id()))
                    .findFirst()
                    .flatMap(throttle -> of(figures, measured, throttle, pedal))
                    .ifPresent(all::add);
        }
        return all;
    }

    private static Optional<PedallingGain> of(
            ClimbFigures figures, List<Figure> measured, ClimbGroup throttle, ClimbGroup pedal) {
        if (throttle.counted().isEmpty() || pedal.counted().isEmpty()) {
            return Optional.empty();
        }
        var byThrottle = time(measured, throttle);
        var byPedal = time(measured, pedal);
        var thisDay = new Budget(parts(byThrottle, "by throttle: ")).minus(new Budget(parts(byPedal, "pedalling: ")));
        double betweenDaysS = figures.answers(throttle)
                .flatMap(one -> figures.answers(pedal)
                        .map(other -> betweenDays(one.time(), byThrottle.value(), other.time(), byPedal.value())))
                .orElse(ClimbRules.GAIN_BETWEEN_DAYS * byThrottle.value());
        var days = new Contribution(BETWEEN_DAYS, Contribution.Evaluation.B, betweenDaysS, 8, "");
        double gain = byThrottle.value() - byPedal.value();
        var anyDay = thisDay.plus(days);
        var spec = Climb.DECLARATION.requireFigure("climb.pedalling-gain");
        var course = pedal.hill().id();
        var runs = new ArrayList<FigureRun>(byThrottle.runs());
        runs.addAll(byPedal.runs());
        var figure = new Figure(
                new FigureKey(spec.id(), course.isEmpty() ? Variant.NONE : Variant.of("course", course)),
                QuantityKind.TIME,
                Climb.DECLARATION.id(),
                Climb.DECLARATION.version(),
                gain,
                thisDay.around(gain),
                anyDay.around(gain),
                runs,
                anyDay.byWeight(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
        return Optional.of(new PedallingGain(figure, said(figure)));
    }

    /// What days do to one time less the other, in seconds: wind and motor act on both, the rider on one alone.
    private static double betweenDays(
            DayAnswers.Answer throttle, double throttleS, DayAnswers.Answer pedal, double pedalS) {
        double motorS = throttle.byDrive() * throttleS - ClimbRules.MOTORS_PART * pedal.byDrive() * pedalS;
        double riderS = ClimbRules.RIDERS_PART * pedal.byDrive() * pedalS;
        double windS = ClimbRules.WIND_OF_DAYS_SD * (throttle.perMps() * throttleS - pedal.perMps() * pedalS);
        return StrictMath.hypot(StrictMath.hypot(motorS, riderS), windS);
    }

    private static Figure time(List<Figure> measured, ClimbGroup group) {
        var key = new FigureKey("climb.time", group.variant());
        return measured.stream()
                .filter(figure -> figure.key().equals(key))
                .findFirst()
                .orElseThrow();
    }

    private static List<Contribution> parts(Figure figure, String prefix) {
        return figure.budget().stream()
                .filter(part -> !part.input().equals(BETWEEN_DAYS))
                .map(part -> part.shared().isEmpty()
                        ? new Contribution(
                                prefix + part.input(),
                                part.evaluation(),
                                part.standardUncertainty(),
                                part.degreesOfFreedom(),
                                "")
                        : part)
                .toList();
    }

    private static Finding said(Figure figure) {
        double half = figure.thisDay().interval95().halfWidth();
        String numbers = String.format(Locale.ROOT, "%.1f s ± %.1f s", figure.value(), half);
        if (Math.abs(figure.value()) < half) {
            return Finding.note(
                    "no-difference-shown",
                    Place.NOWHERE,
                    "no difference shown between throttle alone and pedalling: " + numbers);
        }
        return figure.value() > 0
                ? Finding.note("pedalling-gained", Place.NOWHERE, "pedalling gained " + numbers)
                : Finding.warning(
                        "pedalling-slower",
                        Place.NOWHERE,
                        "pedalling was slower than the throttle alone: " + numbers,
                        "look whether the drives were written down the wrong way round, or the level was not the"
                                + " highest");
    }
}
