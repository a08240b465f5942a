package org.measuredmile.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;

class FoundRunsTest {
    /// Twenty seconds at rest, six of speeding up, ten of riding on, at 5 Hz.
    private static Recording start() {
        double[] timesS = new double[181];
        double[] speedsMps = new double[timesS.length];
        for (int i = 0; i < timesS.length; i++) {
            timesS[i] = i / 5.0;
            speedsMps[i] = Math.clamp((timesS[i] - 20) * 1.5, 0, 9);
        }
        var speed = new Channel(ChannelKind.SPEED, "speed", "", new Channel.Series(timesS, speedsMps));
        return new Recording(
                "ride",
                Format.TCX,
                "",
                Optional.empty(),
                true,
                timesS.length,
                timesS,
                List.of(new Segment(0, timesS[timesS.length - 1])),
                List.of(speed),
                new TreeMap<>(),
                List.of());
    }

    @Test
    void nothingIsFoundInARecordingThatAFindingRefuses() {
        var ride = start();
        assertThat(FoundRuns.in(ride)).isNotEmpty();
        var planned = ride.noting(List.of(Finding.refused("planned-course", Place.NOWHERE, "a plan", "ride it")));
        assertThat(FoundRuns.in(planned)).isEmpty();
    }
}
