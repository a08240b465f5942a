package org.measuredmile.trial;

import java.util.List;
import java.util.Optional;
import org.measuredmile.trial.assistspeed.AssistSpeed;
import org.measuredmile.trial.braking.Braking;
import org.measuredmile.trial.climb.Climb;
import org.measuredmile.trial.coastdown.Coastdown;
import org.measuredmile.trial.engagement.Engagement;
import org.measuredmile.trial.markings.Markings;
import org.measuredmile.trial.range.Range;
import org.measuredmile.trial.standingstart.StandingStart;
import org.measuredmile.trial.weighin.WeighIn;

/// The list of trials: the table of contents of the product.
public final class Trials {
    /// Every trial, in the order of a test day.
    public static final List<Trial> ALL = List.of(
            new Markings(),
            new WeighIn(),
            new Braking(),
            new AssistSpeed(),
            new StandingStart(),
            new Climb(),
            new Engagement(),
            new Coastdown(),
            new Range());

    private Trials() {}

    public static Optional<Trial> find(String id) {
        return ALL.stream().filter(trial -> trial.declaration().id().equals(id)).findFirst();
    }

    /// The declaration of a figure by its id.
    public static Optional<FigureSpec> figure(String figureId) {
        return ALL.stream()
                .flatMap(trial -> trial.declaration().figure(figureId).stream())
                .findFirst();
    }

    /// The trial that delivers a figure.
    public static Optional<Trial> delivering(String figureId) {
        return ALL.stream()
                .filter(trial -> trial.declaration().figure(figureId).isPresent())
                .findFirst();
    }
}
