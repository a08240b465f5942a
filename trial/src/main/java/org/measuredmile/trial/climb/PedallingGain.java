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
import org.measuredmile.trial.TrialInput;

/// What pedalling gained over the throttle alone on one hill, and whether that is a difference at all.
///
/// What both times share (the hill's length, the speed's scale, a watch holder's reaction) cancels.
/// Unit: seconds, positive where pedalling was quicker.
record PedallingGain(Figure figure, Finding finding) {
    private static final String BETWEEN_DAYS = "between days";

    static List<PedallingGain> of(TrialInput input, List<ClimbGroup> groups) {
        var all = new ArrayList<PedallingGain>();
        for (var pedal : groups) {
            groups.stream()
                    .filter(other -> other.drive().equals("throttle")
                            && pedal.drive().equals("pedal")
                            && other.hill().id().equals(pedal.hill().id()))
                    .findFirst()
                    .flatMap(throttle -> of(input, throttle, pedal))
                    .ifPresent(all::add);
        }
        return all;
    }

    private static Optional<PedallingGain> of(TrialInput input, ClimbGroup throttle, ClimbGroup pedal) {
        if (throttle.counted().isEmpty() || pedal.counted().isEmpty()) {
            return Optional.empty();
        }
        var figures = new ClimbFigures(input, both(throttle, pedal))
                .all().stream()
                        .filter(figure -> figure.key().figure().equals("climb.time"))
                        .toList();
        var byThrottle = of(figures, "throttle");
        var byPedal = of(figures, "pedal");
        var thisDay = new Budget(parts(byThrottle, "by throttle: ")).minus(new Budget(parts(byPedal, "pedalling: ")));
        var days = new Contribution(
                BETWEEN_DAYS, Contribution.Evaluation.B, ClimbRules.GAIN_BETWEEN_DAYS * byThrottle.value(), 8, "");
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

    private static List<ClimbRun> both(ClimbGroup throttle, ClimbGroup pedal) {
        var all = new ArrayList<>(throttle.runs());
        all.addAll(pedal.runs());
        return all;
    }

    private static Figure of(List<Figure> figures, String drive) {
        return figures.stream()
                .filter(figure -> figure.key().variant().has("drive", drive))
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
