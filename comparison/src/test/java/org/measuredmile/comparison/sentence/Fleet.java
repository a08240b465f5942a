package org.measuredmile.comparison.sentence;

import java.time.LocalDate;
import java.util.List;
import org.measuredmile.comparison.standing.Entrant;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.FigureSpec;

/// Six invented bikes, four of them for cargo, that can all be told apart.
final class Fleet {
    private static final double HALF_WIDTH = 0.12;

    private Fleet() {}

    /// Their results of a figure, the Lamplight's being as given.
    static List<Entrant> entrants(FigureSpec figure, Variant variant, double lamplight) {
        return List.of(
                entrant("bike-1", "cargo", variant, 25),
                entrant("bike-2", "commuter", variant, 26),
                entrant("ostrelle-lamplight", "cargo", variant, lamplight),
                entrant("bike-3", "cargo", variant, 28),
                entrant("bike-4", "cargo", variant, 31),
                entrant("bike-5", "commuter", variant, 33));
    }

    private static Entrant entrant(String bike, String category, Variant variant, double value) {
        boolean isLamplight = bike.equals("ostrelle-lamplight");
        double standard = HALF_WIDTH / 2;
        return new Entrant(
                bike,
                isLamplight ? "Ostrelle Lamplight" : bike,
                category,
                isLamplight ? "Ostrelle" : "",
                "both",
                LocalDate.of(2031, 4, isLamplight ? 1 : 6),
                variant,
                1,
                value,
                new Uncertainty(standard, 30, Interval.around(value, HALF_WIDTH)),
                List.of(Contribution.typeA("all", standard, 30)));
    }
}
