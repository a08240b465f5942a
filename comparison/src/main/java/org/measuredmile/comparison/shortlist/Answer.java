package org.measuredmile.comparison.shortlist;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;

/// Whether one bike is what a reader wishes for, wish by wish.
///
/// Shape: `replies` in the order of the wishes.
public record Answer(TestedBike bike, List<Reply> replies) {
    /// A wish is surely kept from this probability on, and surely not at one minus it.
    public static final double SURE = 0.975;

    public Answer {
        replies = List.copyOf(replies);
    }

    /// What a reader may take from it.
    public enum Verdict {
        /// Every wish is kept with a probability of at least 97.5 %.
        SURE,
        /// Neither.
        MAYBE,
        /// Some wish is kept with a probability of at most 2.5 %.
        NO;

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /// What is known for one wish: the probability that it is kept, and what that rests on.
    public record Reply(Wish wish, OptionalDouble probability, Basis basis) {
        public Verdict verdict() {
            if (probability.isEmpty()) {
                return Verdict.MAYBE;
            }
            double p = probability.getAsDouble();
            return p >= SURE ? Verdict.SURE : p <= 1 - SURE ? Verdict.NO : Verdict.MAYBE;
        }
    }

    /// What a reply rests on.
    public sealed interface Basis {
        /// A measured or computed value with its any-day interval; `words` say how it was ridden or worked out.
        record Measured(double si, Interval interval95, QuantityKind kind, String words) implements Basis {}

        /// What a maker or a seller states.
        record Stated(String words) implements Basis {}

        /// Nothing that would decide, and why.
        record Missing(String why) implements Basis {}
    }

    public Verdict verdict() {
        var verdicts = replies.stream().map(Reply::verdict).toList();
        if (verdicts.contains(Verdict.NO)) {
            return Verdict.NO;
        }
        return verdicts.contains(Verdict.MAYBE) ? Verdict.MAYBE : Verdict.SURE;
    }

    /// The least of the probabilities; one half for what nobody measured.
    public double leastProbability() {
        return replies.stream()
                .mapToDouble(reply -> reply.probability().orElse(0.5))
                .min()
                .orElse(1);
    }

    /// The wishes of which nothing was measured or stated.
    public List<Reply> unknown() {
        return replies.stream().filter(reply -> reply.probability().isEmpty()).toList();
    }
}
