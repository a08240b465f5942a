package org.measuredmile.comparison.sidebyside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.comparison.TestFigures.bike;
import static org.measuredmile.comparison.TestFigures.figure;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.measuredmile.comparison.TestFigures;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.NotRidden;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Chapter;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Trials;

/// Expected differences are worked out by hand.
class SideBySideTest {
    private static final String STOP = "braking.stopping-distance";
    private static final String TAPE = "method=tape nominal=20-mph surface=dry";
    private static final String MASS = "weighin.mass";

    private static SideBySide of(TestedBike... bikes) {
        return SideBySide.of(List.of(bikes), Map.of());
    }

    private static TestedBike stopping(String model, double metres, double standardUncertainty) {
        return bike(model, figure(STOP, TAPE, metres, standardUncertainty));
    }

    private static FigureRow onlyRow(SideBySide sides) {
        assertThat(sides.rows()).hasSize(1);
        return sides.rows().getFirst();
    }

    @Test
    void aDifferenceHasItsOwnIntervalAndIsRealWhenItsIntervalLeavesZeroOut() {
        var row = onlyRow(of(stopping("Heron", 6.0, 0.1), stopping("Wigeon", 6.4, 0.1)));
        var difference = row.differences().getFirst();
        assertThat(difference.value()).isCloseTo(-0.4, within(1e-12));
        // u = √2 · 0.1, times 1.959964 (JCGM 100:2008, G.3, infinite degrees of freedom).
        assertThat(difference.interval95().halfWidth()).isCloseTo(0.277181, within(1e-6));
        // z = 0.4 / 0.141421 = 2.828427; the two-sided tail beyond it is 0.00467773 (normal distribution).
        assertThat(difference.probability()).isCloseTo(0.00467773, within(1e-7));
        assertThat(difference.real()).isTrue();
        assertThat(row.saying()).isEqualTo("The Heron stops shorter than the Wigeon.");
    }

    @Test
    void whatBikesShareDropsOutOfTheirDifference() {
        var own = Contribution.typeB("runs", 0.1);
        var tape = Contribution.typeB("the tape's scale", 0.5).sharedAs("tape 1");
        var shared = onlyRow(of(
                bike("Heron", figure(STOP, TAPE, 6.0, own, tape)), bike("Wigeon", figure(STOP, TAPE, 6.4, own, tape))));
        assertThat(shared.differences().getFirst().interval95().halfWidth()).isCloseTo(0.277181, within(1e-6));
        assertThat(shared.differences().getFirst().real()).isTrue();
    }

    /// Each of the three differences of 0.3 m has p = 2 · Φ(−0.3 / 0.141421) = 0.033895 by itself. Between
    /// three bikes 6.0, 6.0 and 6.3 two of them are tried among three, 3 · 0.033895 = 0.10: not real.
    @Test
    void aDifferenceThatStandsAloneMayNotStandAmongManyPairs() {
        var two = onlyRow(of(stopping("Heron", 6.0, 0.1), stopping("Wigeon", 6.3, 0.1)));
        assertThat(two.differences().getFirst().real()).isTrue();
        var three =
                onlyRow(of(stopping("Heron", 6.0, 0.1), stopping("Wigeon", 6.3, 0.1), stopping("Dunlin", 6.0, 0.1)));
        assertThat(three.differences()).hasSize(3).noneMatch(Difference::real);
        assertThat(three.differences().getFirst().adjusted()).isCloseTo(3 * 0.033895, within(1e-4));
        assertThat(three.saying()).isEqualTo("None of the three can be told from another.");
    }

    @Test
    void theSayingNamesWhoIsAheadOfWhomAndWhoCannotBeToldApart() {
        var row = onlyRow(of(stopping("Heron", 6.0, 0.05), stopping("Wigeon", 6.8, 0.1), stopping("Dunlin", 6.9, 0.1)));
        assertThat(row.saying())
                .isEqualTo(
                        "The Heron stops shorter than both the others; the Wigeon and the Dunlin can't be told apart.");
        var behind =
                onlyRow(of(stopping("Heron", 6.0, 0.05), stopping("Wigeon", 6.05, 0.05), stopping("Dunlin", 6.9, 0.1)));
        assertThat(behind.saying())
                .isEqualTo("The Heron and the Wigeon stop shorter than the Dunlin; "
                        + "the Heron and the Wigeon can't be told apart.");
        var all =
                onlyRow(of(stopping("Heron", 6.9, 0.01), stopping("Wigeon", 6.4, 0.01), stopping("Dunlin", 6.0, 0.01)));
        assertThat(all.saying())
                .isEqualTo("The Dunlin stops shorter than both the others; "
                        + "all are told apart, in the order Dunlin, Wigeon and Heron.");
        var equal = onlyRow(of(stopping("Heron", 6.0, 0.1), stopping("Wigeon", 6.0, 0.1)));
        assertThat(equal.saying()).isEqualTo("The Heron and the Wigeon can't be told apart.");
    }

    @Test
    void onlyEqualVariantsStandInOneRowAndARowNeedsTwoBikes() {
        var sides = of(
                bike("Heron", figure(STOP, TAPE, 6.0, 0.1), figure(MASS, "battery=in", 25, 0.05)),
                bike("Wigeon", figure(STOP, "method=trace nominal=20-mph surface=dry", 6.4, 0.1)),
                bike("Dunlin", figure(MASS, "battery=in", 27, 0.05)));
        assertThat(sides.rows()).extracting(row -> row.figure().id()).containsExactly(MASS);
        assertThat(sides.rows().getFirst().cells().get(1)).isEqualTo(new Cell.NotMeasured());
        assertThat(sides.rows().getFirst().saying()).isEqualTo("The Heron is lighter than the Dunlin.");
    }

    @Test
    void theHighestLevelOfOneIsComparedWithTheHighestOfAnotherWhateverItsNumber() {
        var sides = of(
                bike("Heron", figure("range.distance", "level=5 levelRole=highest", 40_000, 1_000)),
                bike("Wigeon", figure("range.distance", "level=3 levelRole=highest", 50_000, 1_000)));
        assertThat(onlyRow(sides).variant()).isEqualTo(Variant.of("levelRole", "highest"));
        var middle = of(
                bike("Heron", figure("range.distance", "level=2 levelRole=middle", 40_000, 1_000)),
                bike("Wigeon", figure("range.distance", "level=3 levelRole=middle", 50_000, 1_000)));
        assertThat(middle.rows()).isEmpty();
    }

    @Test
    void whatWasNotRiddenStandsWithItsReason() {
        var left = new NotRidden("weighin", Variant.NONE, "no scale that day");
        var sides = SideBySide.of(
                List.of(
                        bike("Heron", figure(MASS, "battery=in", 25, 0.05)),
                        bike("Wigeon", figure(MASS, "battery=in", 26, 0.05)),
                        bike("Dunlin")),
                Map.of("dunlin", List.of(left)));
        assertThat(onlyRow(sides).cells().get(2)).isEqualTo(new Cell.NotRidden("no scale that day"));
    }

    @Test
    void aResultNobodyConfirmedIsNotCompared() {
        var heron = bike("Heron", figure(MASS, "battery=in", 25, 0.05));
        var proposed = heron.results().getFirst();
        var unconfirmed = new TestedBike(
                heron.bike(),
                List.of(new TestedBike.Result(proposed.figure(), proposed.date(), proposed.day(), "", false)));
        assertThat(of(unconfirmed, bike("Wigeon", figure(MASS, "battery=in", 26, 0.05)))
                        .rows())
                .isEmpty();
    }

    @Test
    void rowsComeInTheOrderInWhichAReaderAsks() {
        var figures = new org.measuredmile.trial.Figure[] {
            figure(MASS, "battery=in", 25, 0.05),
            figure("range.distance", "levelRole=highest", 40_000, 1_000),
            figure("climb.time", "course=brow drive=throttle", 80, 1),
            figure(STOP, TAPE, 6, 0.1),
            figure("standingstart.time-to", "drive=throttle to=20-mph", 7, 0.2),
            figure("standingstart.peak-power", "drive=throttle", 600, 20)
        };
        var sides = of(bike("Heron", figures), bike("Wigeon", figures));
        assertThat(sides.rows())
                .extracting(row -> row.figure().chapter())
                .containsExactly(
                        Chapter.GOING,
                        Chapter.GOING,
                        Chapter.STOPPING,
                        Chapter.CLIMBING,
                        Chapter.HOW_FAR,
                        Chapter.CARRYING);
        assertThat(sides.rows()).filteredOn(FigureRow::foldable).hasSize(1);
    }

    @Test
    void factsStandAsTheMakersStateThem() {
        var heron = TestFigures.tested(
                TestFigures.described("Heron", 1890, TestFigures.line("battery-energy", "540", "Wh")));
        var wigeon = TestFigures.tested(TestFigures.described("Wigeon", 2450.5));
        var facts = of(heron, wigeon).facts();
        assertThat(facts)
                .extracting(FactRow::item)
                .containsExactly("price", "category", "wheel-size", "battery-energy");
        assertThat(facts.getFirst().words()).containsExactly("1890 USD, US, 2031-01-15", "2450.50 USD, US, 2031-01-15");
        assertThat(facts.getLast().words()).containsExactly("540 Wh", "");
    }

    @Test
    void resultsOfVersionsThatMayNotBeRankedTogetherStandBesideEachOtherWithoutBeingCompared() {
        var bikes = List.of(
                stopping("Heron", 6.0, 0.01), bike("Wigeon", TestFigures.byVersion(7, figure(STOP, TAPE, 7.0, 0.01))));
        var declared = Trials.delivering(STOP).orElseThrow().declaration();
        var comparable = declared.requireFigure(STOP);
        assertThat(onlyRow(SideBySide.of(bikes, Map.of(), List.of(declared))).differences())
                .hasSize(1);
        var changed = new FigureSpec(
                comparable.id(),
                comparable.title(),
                comparable.kind(),
                comparable.better(),
                comparable.chapter(),
                comparable.variantKeys(),
                comparable.primary(),
                false,
                comparable.prior(),
                comparable.words(),
                comparable.meaning());
        var trial = Declaration.of("braking", 7, "Braking").figure(changed).handbook(declared.handbook());
        var row = onlyRow(SideBySide.of(bikes, Map.of(), List.of(trial)));
        assertThat(row.differences()).isEmpty();
        assertThat(row.saying())
                .isEqualTo(row.notCompared())
                .startsWith("Not compared: measured by different versions of the trial, Brindle Heron by version ")
                .endsWith("Brindle Wigeon by version 7.");
    }

    @Test
    void twoToSixDifferentBikesAreTaken() {
        assertThatThrownBy(() -> of(bike("Heron"))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> of(bike("Heron"), bike("Heron"))).isInstanceOf(IllegalArgumentException.class);
    }
}
