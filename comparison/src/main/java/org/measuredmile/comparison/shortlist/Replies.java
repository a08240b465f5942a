package org.measuredmile.comparison.shortlist;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.shortlist.Answer.Basis;
import org.measuredmile.comparison.shortlist.Answer.Reply;
import org.measuredmile.comparison.sidebyside.FactRow;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.quantity.statistics.StudentT;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.Trials;

/// Answers the wishes of a list for one bike after another.
///
/// Source: JCGM 106:2012, 7.2 (probability that a limit is kept), 7.2.3 (t for few degrees of freedom).
record Replies(WishList wishes, Map<Wish, Variant> variants) {
    static final String RANGE = "range.distance";
    static final String RIDDEN_AT_LEAST = "range.at-least";

    List<Reply> of(TestedBike bike) {
        return wishes.wishes().stream().map(wish -> reply(wish, bike)).toList();
    }

    private Reply reply(Wish wish, TestedBike bike) {
        return switch (wish) {
            case Wish.Climbs climbs -> climbs(climbs, bike);
            case Wish.OfFigure of -> figure(of, bike);
            case Wish.OfPrice price -> price(price, bike.bike());
            case Wish.OfClaim claim -> claim(claim, bike.bike());
            case Wish.OfFact fact -> fact(fact, bike.bike());
        };
    }

    private double riderKg() {
        return wishes.riderKg().orElse(RoadSetting.REFERENCE_RIDER_KG);
    }

    private static Reply missing(Wish wish, String why) {
        return new Reply(wish, OptionalDouble.empty(), new Basis.Missing(why));
    }

    private static Reply stated(Wish wish, boolean holds, String words) {
        return new Reply(wish, OptionalDouble.of(holds ? 1 : 0), new Basis.Stated(words));
    }

    private Reply climbs(Wish.Climbs wish, TestedBike bike) {
        var able = ClimbingAbility.of(bike, riderKg());
        if (able.isEmpty()) {
            return missing(wish, "not measured: no standing start told its thrust");
        }
        var grades = able.get().grades();
        String words = "steepest grade " + able.get().words()
                + (able.get().assumed().isEmpty()
                        ? ""
                        : "; assumed: " + String.join("; ", able.get().assumed()));
        var basis = new Basis.Measured(grades.mean(), grades.symmetric95(), QuantityKind.RATIO, words);
        return new Reply(wish, OptionalDouble.of(able.get().probability(wish.grade())), basis);
    }

    private Reply figure(Wish.OfFigure wish, TestedBike bike) {
        var variant = variants.getOrDefault(wish, wish.asked());
        var found = latest(bike, wish.figure(), wish, variant);
        if (found.isEmpty()) {
            return wish.figure().equals(RANGE) ? riddenAtLeast(wish, bike, variant) : missing(wish, "not measured");
        }
        // What may be carried is left over for a rider of the reference mass; another rider leaves more or less.
        boolean isPayload = wish.figure().equals(WishTerm.PAYLOAD);
        double shift = isPayload ? RoadSetting.REFERENCE_RIDER_KG - riderKg() : 0;
        var figure = found.get();
        var known = figure.anyDay();
        String words = isPayload ? "beside a rider of " + wishes.riderWords() : words(figure);
        var basis = new Basis.Measured(
                figure.value() + shift,
                new Interval(
                        known.interval95().low() + shift, known.interval95().high() + shift),
                figure.kind(),
                words);
        return new Reply(
                wish,
                OptionalDouble.of(probability(wish.side(), figure.value() + shift, known, wish.limitSi())),
                basis);
    }

    /// How a figure was ridden.
    private static String words(Figure figure) {
        return Trials.delivering(figure.key().figure())
                .orElseThrow()
                .declaration()
                .words(figure.key().variant());
    }

    private static Optional<Figure> latest(TestedBike bike, String id, Wish.OfFigure wish, Variant variant) {
        return bike.of(id).stream()
                .map(TestedBike.Result::figure)
                .filter(figure -> Shortlist.place(wish, figure.key().variant()).equals(variant))
                .findFirst();
    }

    /// A ride that stopped early tells a range of at least what was ridden: enough to be sure, never enough to
    /// say no.
    private static Reply riddenAtLeast(Wish.OfFigure wish, TestedBike bike, Variant variant) {
        var bound = latest(bike, RIDDEN_AT_LEAST, wish, variant);
        if (bound.isEmpty() || wish.side().wantsLess()) {
            return missing(wish, "not measured");
        }
        double p = probability(wish.side(), bound.get().value(), bound.get().anyDay(), wish.limitSi());
        return p < Answer.SURE
                ? missing(wish, "not measured: its ride stopped early, before this distance")
                : new Reply(
                        wish,
                        OptionalDouble.of(p),
                        new Basis.Measured(
                                bound.get().value(),
                                bound.get().anyDay().interval95(),
                                bound.get().kind(),
                                "ridden at least, the ride stopped early"));
    }

    /// The probability that the true value lies on the wanted side of a limit.
    static double probability(Wish.Side side, double value, Uncertainty known, double limit) {
        if (known.standard() == 0) {
            return side.holds(value, limit) ? 1 : 0;
        }
        double t = (limit - value) / known.standard();
        double degrees = Math.max(1, known.degreesOfFreedom());
        return side.wantsLess() ? StudentT.below(t, degrees) : StudentT.below(-t, degrees);
    }

    private static Reply price(Wish.OfPrice wish, Bike bike) {
        var price = bike.price();
        if (price.amount().isEmpty()) {
            return missing(wish, "no price is stated");
        }
        String words = FactRow.price(bike);
        boolean isOther = !wish.currency().isEmpty() && !wish.currency().equals(price.currency());
        return isOther
                ? missing(wish, "priced in another currency: " + words)
                : stated(wish, wish.side().holds(price.amount().getAsDouble(), wish.amount()), words);
    }

    private static Reply claim(Wish.OfClaim wish, Bike bike) {
        var claimed = bike.claimed(wish.item(), wish.kind());
        if (claimed.isEmpty()) {
            return missing(wish, "the maker states none");
        }
        String words = bike.spec().stream()
                .filter(line -> line.item().equals(wish.item()))
                .map(line -> (line.claimed() + " " + line.unit()).strip() + ", claimed")
                .findFirst()
                .orElse("");
        return stated(wish, wish.side().holds(claimed.getAsDouble(), wish.limitSi()), words);
    }

    private static Reply fact(Wish.OfFact wish, Bike bike) {
        String known = switch (wish.fact()) {
            case CATEGORY -> bike.category();
            case MAKER -> bike.maker();
            case SENSOR -> bike.sensor();
            case DRIVE -> bike.drive();
            case THROTTLE -> bike.drive().isEmpty() ? "" : bike.drive().equals("pedal") ? "no" : "yes";
        };
        boolean isUnknown = known.isEmpty() || (wish.fact() == Wish.Fact.SENSOR && known.equals("unknown"));
        if (isUnknown) {
            return missing(wish, "nothing is written down");
        }
        return stated(wish, plain(known).equals(plain(wish.wanted())), known);
    }

    /// A maker of two words is written with a hyphen in a wish.
    private static String plain(String words) {
        return words.strip().toLowerCase(Locale.ROOT).replace(' ', '-');
    }
}
