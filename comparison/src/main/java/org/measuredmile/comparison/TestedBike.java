package org.measuredmile.comparison;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.trial.Correlation;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;

/// A bike with its specification and every figure of it that stands.
///
/// Shape: `results` holds, of each configuration and variant, the figure of the latest day; latest days first.
public record TestedBike(Bike bike, List<Result> results) {
    /// A figure, where it comes from and in which configuration.
    ///
    /// Shape: `day` is the test day's id; `accepted` when every run it was made from was confirmed by a person;
    /// `correlations` are with other figures of that day.
    public record Result(
            Figure figure,
            LocalDate date,
            String day,
            String configuration,
            boolean accepted,
            List<Correlation> correlations) {
        public Result {
            correlations = List.copyOf(correlations);
        }

        /// A result of which nobody kept how it leans on others.
        public Result(Figure figure, LocalDate date, String day, String configuration, boolean accepted) {
            this(figure, date, day, configuration, accepted, List.of());
        }

        /// How it leans on another result: as was kept, not at all on one of another day; empty where
        /// nobody kept it.
        public OptionalDouble correlation(Result other) {
            if (!day.equals(other.day())) {
                return OptionalDouble.of(0);
            }
            return correlations.stream()
                    .filter(each -> each.isBetween(figure.key(), other.figure().key()))
                    .mapToDouble(Correlation::coefficient)
                    .findFirst();
        }
    }

    public TestedBike {
        results = results.stream()
                .sorted(Comparator.comparing(Result::date)
                        .reversed()
                        .thenComparing(Result::day, Comparator.reverseOrder())
                        .thenComparing(result -> result.figure().key()))
                .toList();
    }

    /// The accepted results of a figure id in all variants and configurations, latest first.
    public List<Result> of(String figure) {
        return results.stream()
                .filter(Result::accepted)
                .filter(result -> result.figure().key().figure().equals(figure))
                .toList();
    }

    /// The latest accepted result of exactly this figure and variant, whatever the configuration.
    public Optional<Result> latest(FigureKey key) {
        return of(key.figure()).stream()
                .filter(result -> result.figure().key().equals(key))
                .findFirst();
    }
}
