package org.measuredmile.trial.standingstart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Outcome;

/// How fast starts became that were ridden on.
class HighestSpeedTest {
    private static Optional<Figure> highest(Outcome outcome) {
        return outcome.figures().stream()
                .filter(figure -> figure.key().text().equals("standingstart.highest-speed drive=throttle"))
                .findFirst();
    }

    /// One start each way towards a top speed that the ride nears as 1 − exp(−2t/top).
    private static StartDays starts(double topMps, double seconds, String... directions) {
        var day = StartDays.day();
        var ride = StartDays.ride();
        var ids = new String[directions.length];
        for (int i = 0; i < directions.length; i++) {
            ids[i] = "s-" + (i + 1);
            day.run(ids[i], directions[i]);
            ride.stand(3).start(2, topMps, seconds).brake(0);
        }
        return day.recording(ride.stand(2).seen("starts.csv", 10, 3), ids);
    }

    @Test
    void aStartRiddenUntilTheSpeedIsLevelTellsItsHighest() {
        var figure = highest(starts(9.5, 50, "out", "back").reduce()).orElseThrow();
        // 9.5·(1 − exp(−2·46/9.5)) is 9.499 m/s at the middle of the last level stretch.
        assertThat(figure.value()).isCloseTo(9.499, within(0.05));
        assertThat(figure.thisDay().interval95().contains(9.499)).isTrue();
        assertThat(figure.counted()).isEqualTo(2);
        // A receiver that nobody calibrated: 0.2 % of 9.5 m/s, house value.
        assertThat(figure.budget())
                .filteredOn(one -> one.input().equals("scale of the receiver speed (not calibrated)"))
                .singleElement()
                .satisfies(one -> assertThat(one.standardUncertainty()).isCloseTo(0.019, within(0.001)));
    }

    @Test
    void aStartLetGoWhileItStillGainedTellsNothing() {
        assertThat(highest(starts(12, 12, "out", "back").reduce())).isEmpty();
    }

    @Test
    void ofARunThatGainedToTheEndAndOneThatDidNotOnlyOneCountsAndTheOtherSaysWhy() {
        var day = StartDays.day().run("s-1", "out").run("s-2", "back");
        var ride = StartDays.ride().stand(3).start(2, 9.5, 50).brake(0).stand(3).start(2, 12, 12);
        var figure = highest(day.recording(ride.brake(0).stand(2).seen("starts.csv", 10, 3), "s-1", "s-2")
                        .reduce())
                .orElseThrow();
        assertThat(figure.counted()).isEqualTo(1);
        assertThat(figure.runs().getLast().reason()).contains("still rose");
    }

    /// Head wind w and slope θ move the balance P/v = R + k·(v + w)² by −2k·v·(v + w) and −m·g·v over R +
    /// 3k·v²: 0.6 and 100 to 120 m/s at 9 m/s, arithmetic. One way, neither cancels: the wind of 1 m/s alone
    /// leaves 0.42 m/s.
    @Test
    void oneWayOnlyIsMuchWider() {
        double bothWays = halfWidth(starts(9.5, 50, "out", "back"));
        double oneWay = halfWidth(starts(9.5, 50, "out", "out"));
        assertThat(oneWay).isGreaterThan(2 * Math.hypot(0.42, 0.3)).isGreaterThan(1.5 * bothWays);
    }

    private static double halfWidth(StartDays day) {
        return highest(day.reduce()).orElseThrow().thisDay().interval95().halfWidth();
    }
}
