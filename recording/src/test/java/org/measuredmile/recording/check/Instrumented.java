package org.measuredmile.recording.check;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.TestDay;

/// What one instrument writes of a made ride.
final class Instrumented {
    static final Instant NINE = Instant.parse("2031-05-14T08:00:00Z");
    static final int SECONDS = 900;
    static final double METRES_A_DEGREE = 111_195;

    /// The ride's true speed, restless enough to be told from itself at any other time.
    static double mps(double timeS) {
        return 6 + 2 * Math.sin(timeS / 11) + 1.5 * Math.sin(timeS / 47 + 1) + Math.sin(timeS / 5.3);
    }

    private final String name;
    private final Random noise;
    Instant start = NINE;
    boolean dated = true;
    boolean zoneStated = true;
    double fromS;
    double toS = SECONDS;
    double clockS;
    double noiseM = 0.001;
    boolean positions = true;
    boolean speed = true;
    boolean power;

    Instrumented(String name) {
        this.name = name;
        this.noise = new Random(name.hashCode());
    }

    Recording recording() {
        int size = (int) (toS - fromS);
        double[] timesS = new double[size];
        Arrays.setAll(timesS, i -> i);
        List<Channel> channels = new ArrayList<>();
        if (positions) {
            double[] wayM = new double[size];
            double sumM = 0;
            for (int i = 0; i < (int) toS; i++) {
                sumM += mps(i);
                if (i >= fromS) {
                    wayM[i - (int) fromS] = sumM + noiseM * noise.nextGaussian();
                }
            }
            channels.add(channel(ChannelKind.LATITUDE, timesS, i -> 50 + wayM[(int) i] * 0.8 / METRES_A_DEGREE));
            channels.add(channel(ChannelKind.LONGITUDE, timesS, i -> 8 + wayM[(int) i] * 0.9 / METRES_A_DEGREE));
        }
        if (speed) {
            channels.add(
                    channel(ChannelKind.SPEED, timesS, i -> mps(i + fromS) + 10 * noiseM * noise.nextGaussian() / 100));
        }
        if (power) {
            channels.add(channel(ChannelKind.POWER, timesS, i -> Math.rint(120 + 10 * mps(i + fromS))));
        }
        return new Recording(
                name,
                Format.GPX,
                "",
                dated ? Optional.of(start.plusMillis(Math.round(1000 * (fromS + clockS)))) : Optional.empty(),
                zoneStated,
                size,
                timesS,
                List.of(new Segment(0, size - 1)),
                channels,
                new TreeMap<>(),
                List.of());
    }

    static Channel channel(ChannelKind kind, double[] timesS, DoubleUnaryOperator value) {
        return new Channel(
                kind,
                kind.id(),
                "",
                new Channel.Series(timesS, Arrays.stream(timesS).map(value).toArray()));
    }

    static TestDay day(RecordingEntry... entries) {
        return new TestDay(
                "day",
                LocalDate.parse("2031-05-14"),
                ZoneId.of("Europe/London"),
                "Wendlesea, invented",
                "bike",
                Configuration.UNKNOWN,
                List.of(),
                List.of(),
                Optional.empty(),
                Conditions.UNKNOWN,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(entries));
    }

    static DayChecks check(TestDay day, Recording... recordings) {
        var byName = new TreeMap<String, Recording>();
        for (Recording recording : recordings) {
            byName.put(recording.name(), recording);
        }
        return DayChecks.of(day, byName, new TreeMap<>());
    }
}
