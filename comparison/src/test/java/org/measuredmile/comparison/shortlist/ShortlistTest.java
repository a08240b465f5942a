package org.measuredmile.comparison.shortlist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.comparison.TestFigures.bike;
import static org.measuredmile.comparison.TestFigures.described;
import static org.measuredmile.comparison.TestFigures.figure;
import static org.measuredmile.comparison.TestFigures.line;
import static org.measuredmile.comparison.TestFigures.tested;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.shortlist.Answer.Verdict;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.recording.Finding;
import org.measuredmile.trial.Figure;

class ShortlistTest {
    private static Shortlist ask(String wishes, TestedBike... bikes) {
        return switch (outcome(wishes, bikes)) {
            case Shortlist.Outcome.Drawn(Shortlist shortlist) -> shortlist;
            case Shortlist.Outcome.Unclear(List<Finding> faults) -> throw new AssertionError(faults.toString());
        };
    }

    private static Shortlist.Outcome outcome(String wishes, TestedBike... bikes) {
        return switch (WishList.parse(wishes)) {
            case WishList.Read.Stated(WishList list) -> Shortlist.of(list, List.of(bikes));
            case WishList.Read.Unclear(List<Finding> faults) -> throw new AssertionError(faults.toString());
        };
    }

    private static Answer.Reply only(Shortlist shortlist) {
        return shortlist.answers().getFirst().replies().getFirst();
    }

    private static Figure mass(double kg, double u) {
        return figure("weighin.mass", "battery=in", kg, u);
    }

    /// Conformance probabilities of JCGM 106:2012, 7.3.3, examples 1 and 2 (0.92 and 0.99 as printed, the
    /// digits by the normal distribution), and with two degrees of freedom by Student's t: 0.908248 for a limit
    /// two standard uncertainties away.
    @Test
    void theProbabilityThatALimitIsKeptIsThatOfThePublishedExamples() {
        double infinite = Double.POSITIVE_INFINITY;
        assertThat(Replies.probability(Wish.Side.AT_MOST, -5.47, known(0.05, infinite), -5.40))
                .isCloseTo(0.919243, within(1e-6));
        assertThat(Replies.probability(Wish.Side.AT_LEAST, 509.7, known(8.6, infinite), 490))
                .isCloseTo(0.989010, within(1e-6));
        assertThat(Replies.probability(Wish.Side.LESS, 24.6, known(0.2, 2), 25.0))
                .isCloseTo(0.908248, within(1e-6));
    }

    private static Uncertainty known(double standard, double degrees) {
        return new Uncertainty(standard, degrees, new Interval(0, 0));
    }

    @Test
    void aBikeIsSureMaybeOrNotByItsLeastProbableWish() {
        var shortlist = ask(
                "mass<25kg price<2000",
                bike("Heron", mass(24, 0.1)),
                bike("Wigeon", mass(24.9, 0.1)),
                bike("Dunlin", mass(26, 0.1)),
                bike("Knot"));
        assertThat(shortlist.answers())
                .extracting(one -> one.bike().bike().model())
                .containsExactly("Heron", "Wigeon", "Knot", "Dunlin");
        assertThat(shortlist.answers())
                .extracting(Answer::verdict)
                .containsExactly(Verdict.SURE, Verdict.MAYBE, Verdict.MAYBE, Verdict.NO);
        assertThat(shortlist.answers().get(2).unknown())
                .extracting(Answer.Reply::basis)
                .containsExactly(new Answer.Basis.Missing("not measured"));
    }

    /// 97.5 % is 1.959964 standard uncertainties (normal distribution) away from the limit.
    @Test
    void theBoundaryOfSureIsAtNinetySevenAndAHalfPerCent() {
        assertThat(only(ask("mass<25kg", bike("Heron", mass(25 - 0.19600, 0.1))))
                        .verdict())
                .isEqualTo(Verdict.SURE);
        assertThat(only(ask("mass<25kg", bike("Heron", mass(25 - 0.19599, 0.1))))
                        .verdict())
                .isEqualTo(Verdict.MAYBE);
        assertThat(only(ask("mass<25kg", bike("Heron", mass(25 + 0.19599, 0.1))))
                        .verdict())
                .isEqualTo(Verdict.MAYBE);
        assertThat(only(ask("mass<25kg", bike("Heron", mass(25 + 0.19600, 0.1))))
                        .verdict())
                .isEqualTo(Verdict.NO);
    }

    @Test
    void factsAreCertainAsStated() {
        var heron = tested(described("Heron", 1999, line("battery-energy", "540", "Wh")));
        assertThat(ask("price<2000USD category=commuter throttle=yes battery>=500Wh maker=brindle", heron)
                        .answers()
                        .getFirst()
                        .verdict())
                .isEqualTo(Verdict.SURE);
        assertThat(only(ask("price<1999", heron)).probability()).isEqualTo(OptionalDouble.of(0));
        assertThat(only(ask("price<=1999", heron)).probability()).isEqualTo(OptionalDouble.of(1));
        assertThat(only(ask("throttle=no", heron)).verdict()).isEqualTo(Verdict.NO);
        assertThat(only(ask("price<2000EUR", heron)).basis())
                .isEqualTo(new Answer.Basis.Missing("priced in another currency: 1999 USD, US, 2031-01-15"));
    }

    /// Of 140 kg permitted a bike of 25 kg leaves 35 kg beside the reference rider of 80 kg, and 5 kg beside one of
    /// 110.
    @Test
    void aHeavierRiderLeavesLessToCarry() {
        var heron = bike("Heron", figure("weighin.payload", "", 35, 0.1));
        assertThat(only(ask("carries>=30kg", heron)).verdict()).isEqualTo(Verdict.SURE);
        assertThat(only(ask("carries>=30kg rider=110kg", heron)).verdict()).isEqualTo(Verdict.NO);
        var basis = (Answer.Basis.Measured)
                only(ask("carries>=4kg rider=110kg", heron)).basis();
        assertThat(basis.si()).isCloseTo(5, within(1e-12));
        assertThat(basis.words()).isEqualTo("beside a rider of 110kg");
    }

    @Test
    void aRideThatStoppedEarlyCanMakeSureButNeverSayNo() {
        var heron = bike("Heron", figure("range.at-least", "level=5 levelRole=highest", 60_000, 500));
        assertThat(only(ask("range>=50km", heron)).verdict()).isEqualTo(Verdict.SURE);
        assertThat(only(ask("range>=70km", heron)).verdict()).isEqualTo(Verdict.MAYBE);
        assertThat(only(ask("range>=70km", heron)).probability()).isEmpty();
    }

    @Test
    void theVariantIsTheOneThatMostBikesHaveElseAllAreNamed() {
        var brow = figure("climb.time", "course=brow drive=throttle", 80, 1);
        var hill = figure("climb.time", "course=hill drive=throttle", 120, 1);
        var shortlist = ask("climb.time<=90s", bike("Heron", brow, hill), bike("Wigeon", brow));
        assertThat(shortlist.answers()).extracting(Answer::verdict).containsOnly(Verdict.SURE);
        assertThat(outcome("climb.time<=90s", bike("Heron", brow), bike("Wigeon", hill)))
                .isInstanceOfSatisfying(
                        Shortlist.Outcome.Unclear.class,
                        unclear -> assertThat(unclear.faults().getFirst().remedy())
                                .contains("climb.time[course=brow,drive=throttle]<=90s or climb.time[course=hill"));
        assertThat(outcome("climb.time[course=moor]<=90s", bike("Heron", brow)))
                .isInstanceOfSatisfying(
                        Shortlist.Outcome.Unclear.class,
                        unclear -> assertThat(unclear.faults().getFirst().message())
                                .isEqualTo("no bike was tested so"));
    }

    @Test
    void anEqualGradeNeedsTheForceOfTheHillAndOfTheTyres() {
        var exact = climber(200, 0, 400);
        // By hand: m = 25 + 110 kg, g = 9.80665 m/s², rolling 0.008; at 5 km/h 400 W are 288 N, so that the 200 N of
        // the
        // launch count; drag 0.5 · 1.1855 kg/m³ · 0.6 m² · (1.38889 m/s)² = 0.69 N. F(14 %) = 1323.90 · 0.148 / 1.00975
        // = 194.05 N and F(15 %) = 206.86 N.
        assertThat(only(ask("climbs=14% rider=110kg", exact)).verdict()).isEqualTo(Verdict.SURE);
        assertThat(only(ask("climbs=15% rider=110kg", exact)).verdict()).isEqualTo(Verdict.NO);
    }

    /// (200 − 0.69 − 194.05) N / 20 N = 0.263, Φ = 0.6037; 4,000 draws hold it to ± 0.025 (three standard
    /// deviations).
    @Test
    void theProbabilityOfClimbingFollowsFromHowWellTheForceIsKnown() {
        var reply = only(ask("climbs=14% rider=110kg", climber(200, 20, 400)));
        assertThat(reply.probability().orElseThrow()).isCloseTo(0.6037, within(0.025));
        assertThat(reply.verdict()).isEqualTo(Verdict.MAYBE);
    }

    /// 100 W at 5 km/h are 72 N, less than the 142 N that 10 % take: it moves off and then stands.
    @Test
    void aBikeMustKeepGoingToo() {
        assertThat(only(ask("climbs=10% rider=110kg", climber(200, 0, 100))).verdict())
                .isEqualTo(Verdict.NO);
        assertThat(only(ask("climbs=10% rider=110kg", climber(200, 0, 400))).verdict())
                .isEqualTo(Verdict.SURE);
    }

    @Test
    void whatNobodyMeasuredOfAClimbIsSaid() {
        assertThat(only(ask("climbs=10%", bike("Heron"))).basis())
                .isEqualTo(new Answer.Basis.Missing("not measured: no standing start told its thrust"));
        var unweighed = bike("Heron", launch(300, 0), power(800));
        var basis = (Answer.Basis.Measured) only(ask("climbs=10%", unweighed)).basis();
        assertThat(basis.words()).contains("by throttle alone", "mass of the bike: 28 ± 4 kg", "no coast-down");
    }

    private static Figure launch(double newtons, double u) {
        return figure("standingstart.launch-force", "drive=throttle", newtons, Contribution.typeB("own", u));
    }

    private static Figure power(double watts) {
        return figure("standingstart.power-limit", "drive=throttle", watts, 0);
    }

    private static TestedBike climber(double newtons, double u, double watts) {
        return bike(
                "Heron",
                launch(newtons, u),
                power(watts),
                mass(25, 0),
                figure("coastdown.rolling-coefficient", "", 0.008, 0),
                figure("coastdown.drag-area", "", 0.6, 0));
    }
}
