package org.measuredmile.recording.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;

class HandoverTest {
    /// A file of one sample a second that stands from 390 s to 400 s of the day's ride.
    private static DayRecording file(String name, int fromS, int toS, boolean hasSpeed) {
        double[] timesS = new double[toS - fromS + 1];
        double[] mps = new double[timesS.length];
        for (int i = 0; i < timesS.length; i++) {
            timesS[i] = i;
            mps[i] = fromS + i >= 390 && fromS + i <= 400 ? 0 : 5;
        }
        ChannelKind kind = hasSpeed ? ChannelKind.SPEED : ChannelKind.LATITUDE;
        return new DayRecording(
                new Recording(
                        name,
                        Format.GPX,
                        "",
                        Optional.of(Instrumented.NINE.plus(Duration.ofSeconds(fromS))),
                        true,
                        timesS.length,
                        timesS,
                        List.of(new Segment(0, toS - fromS)),
                        List.of(new Channel(kind, kind.id(), "", new Channel.Series(timesS, mps))),
                        new TreeMap<>(),
                        List.of()),
                Optional.empty(),
                Optional.empty());
    }

    @Test
    void aFileWithinAnotherIsLeftToItWhole() {
        assertThat(Handover.between(file("a", 0, 900, true), file("b", 100, 500, true), 0))
                .containsExactly(new Beside("b", "a", 0, 400));
    }

    @Test
    void filesChangeOverWhereTheBikeStands() {
        assertThat(Handover.between(file("a", 0, 600, true), file("b", 300, 900, true), 0))
                .as("b is left until 400 s of the ride, which are 100 s of its own, then a is")
                .containsExactlyInAnyOrder(new Beside("b", "a", 0, 100), new Beside("a", "b", 400, 600));
        assertThat(Handover.between(file("b", 300, 900, true), file("a", 0, 600, true), 0))
                .containsExactlyInAnyOrder(new Beside("b", "a", 0, 90), new Beside("a", "b", 390, 600));
    }

    @Test
    void withoutAStandstillTheBetterFileServesToItsEnd() {
        assertThat(Handover.between(file("a", 0, 600, true), file("b", 450, 900, true), 0))
                .containsExactly(new Beside("b", "a", 0, 150));
        assertThat(Handover.between(file("a", 0, 600, true), file("b", 300, 900, false), 0))
                .containsExactly(new Beside("b", "a", 0, 300));
    }

    @Test
    void aFileThatRunsOnBothSidesIsLeftInTheMiddleOnly() {
        assertThat(Handover.between(file("a", 410, 500, true), file("b", 0, 900, true), 0))
                .containsExactly(new Beside("b", "a", 410, 500));
    }

    @Test
    void clocksThatAreApartAreSetForTheComparisonOnly() {
        assertThat(Handover.between(file("a", 0, 600, true), file("b", 3600 + 450, 3600 + 900, true), -3600))
                .containsExactly(new Beside("b", "a", 0, 150));
    }
}
