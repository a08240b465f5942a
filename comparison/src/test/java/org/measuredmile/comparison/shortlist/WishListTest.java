package org.measuredmile.comparison.shortlist;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Variant;

class WishListTest {
    private static WishList stated(String text) {
        return switch (WishList.parse(text)) {
            case WishList.Read.Stated(WishList list) -> list;
            case WishList.Read.Unclear(List<Finding> faults) -> throw new AssertionError(faults.toString());
        };
    }

    private static List<Finding> faults(String text) {
        return switch (WishList.parse(text)) {
            case WishList.Read.Stated(WishList list) -> throw new AssertionError(list.toString());
            case WishList.Read.Unclear(List<Finding> faults) -> faults;
        };
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "climbs=10% price<2000 carries>=40kg rider=110kg",
                "price<=1999.50USD",
                "mass<25kg range>=30mi stops<=22ft category=step-through throttle=yes",
                "stops<=22ft4in maker=Brindle drive=both sensor=torque battery>=500Wh",
                "standingstart.time-to[drive=throttle,to=20-mph]<=7s",
            })
    void aListIsPrintedBackExactlyAsItWasUnderstood(String text) {
        assertThat(stated(text).expression()).isEqualTo(text);
        assertThat(stated(stated(text).expression())).isEqualTo(stated(text));
    }

    @Test
    void theRiderStandsLastAndSignsAreWrittenOneWay() {
        assertThat(stated("rider=110kg  climbs>=10%").expression()).isEqualTo("climbs=10% rider=110kg");
        assertThat(stated("range≥30mi").expression()).isEqualTo("range>=30mi");
        assertThat(stated("climbs=10% rider=240lb").riderKg().orElseThrow()).isBetween(108.8, 108.9);
    }

    @Test
    void shortNamesMeanTheFigureAsItIsUsuallyMeant() {
        var wish = (Wish.OfFigure) stated("range>=30mi").wishes().getFirst();
        assertThat(wish.figure()).isEqualTo("range.distance");
        assertThat(wish.asked()).isEqualTo(Variant.of("levelRole", "highest"));
        // A mile is 1609.344 m exactly (NIST SP 811, appendix B).
        assertThat(wish.limitSi()).isEqualTo(30 * 1609.344);
        var lowest =
                (Wish.OfFigure) stated("range[levelRole=lowest]>=30mi").wishes().getFirst();
        assertThat(lowest.asked()).isEqualTo(Variant.of("levelRole", "lowest"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            mass=25kg                  | hardly ever just this one      | write mass<=25kg
            carries=40kg               | hardly ever just this one      | write carries>=40kg
            mass<25                    | has no unit                    | write the unit: kg or lb
            range>=30kg                | a length is wanted             | km or mi
            climbs<10%                 | climbs every flatter one       | write climbs=10%
            climbs=10                  | has no unit                    | climbs=10%
            climbs=0%                  | no road is that steep          | climbs=10%
            price<2,000                | is no price                    | price<2000USD
            price=2000                 | hardly ever just this one      | write price<=2000
            speed>20mph                | no wish is called "speed"      | use climbs, price
            throttle=maybe             | "maybe" is not known here      | throttle=yes or no
            category>cargo             | a word, not a number           | write category=cargo
            price[at=home]<2000        | only a figure has a variant    | leave [at=home] out
            range[colour=red]>=30mi    | "colour" is no way             | use level, levelRole, at
            range[levelRole=top]>=30mi | "levelRole=top" says no        | levelRole=lowest or
            cheap                      | it is no wish                  | as in mass<25kg
            rider=110kg                | nothing is wished for          | climbs=10%
            rider=110 climbs=10%       | has no unit                    | rider=110kg
            rider=900kg climbs=10%     | no rider weighs                | from 20 to 250 kg
            rider=110kg mass<25kg      | depends on the rider           | leave it out
            mass<25kg mass<25kg        | it stands twice                | leave one of them out
            ``                         | nothing is wished for          | write a wish
            """)
    void aWrongWishIsRefusedWithWhatToWriteInstead(String text, String message, String remedy) {
        assertThat(faults(text)).hasSize(1).first().satisfies(fault -> {
            assertThat(fault.message()).contains(message);
            assertThat(fault.remedy()).contains(remedy);
        });
    }

    @Test
    void theFiguresThatAnswerItAreKnownBeforehand() {
        assertThat(stated("price<2000 range>=30mi").figures()).containsExactly("range.at-least", "range.distance");
        assertThat(stated("climbs=10%").figures())
                .contains("standingstart.launch-force", "standingstart.power-limit", "weighin.mass");
    }

    @Test
    void allFaultsAreToldAtOnce() {
        assertThat(faults("mass=25kg cheap price<2,000 climbs=10% throttle=maybe"))
                .hasSize(4);
    }
}
