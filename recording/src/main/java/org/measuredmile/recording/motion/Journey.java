package org.measuredmile.recording.motion;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;

/// One ride out of one or many recordings, joined in order of time, with its pauses and what was not recorded.
///
/// Shape: `legs` in order; `speed` holds every leg's samples on the journey's own time base, which begins with the
/// first leg; `leftOut` names recordings that could not be put in order.
/// Unit: seconds, metres. `begin` is the instant of time 0, where the first leg has one. `wayM` is speed integrated
/// within the recordings' own rhythm; `unrecordedM` is the straight line, or the line between two speeds, over gaps,
/// and is not in `wayM`; `meanSquareSpeed` in m²/s² weighs by distance.
/// Source: trapezoids on true time stamps; the limits of a gap and of standing are house values.
public record Journey(
        List<Leg> legs,
        Optional<Instant> begin,
        Channel speed,
        Sums sums,
        List<String> leftOut,
        List<Finding> findings) {
    /// A recording of the journey; `shiftS` takes its own seconds to the journey's.
    public record Leg(Recording recording, SpeedSource source, double shiftS) {}

    /// What a journey comes to.
    public record Sums(double wayM, double unrecordedM, double ridingS, double meanSquareSpeed, int stops) {}

    /// A recording with what its clock is off by.
    public record Part(Recording recording, double clockOffsetS) {
        Optional<Instant> start() {
            return recording
                    .start()
                    .map(at -> at.plusNanos(Math.round((recording.timesS().length == 0
                                            ? 0
                                            : recording.timesS()[0])
                                    * 1e9))
                            .plusNanos(Math.round(clockOffsetS * 1e9)));
        }
    }

    private static final double OVERLAP_S = 2;

    public Journey {
        legs = List.copyOf(legs);
        leftOut = List.copyOf(leftOut);
        findings = List.copyOf(findings);
    }

    /// Joins recordings; nothing where none of them has a speed or positions.
    public static Optional<Journey> of(List<Part> parts) {
        var moving = parts.stream()
                .filter(part -> SpeedSource.best(part.recording())
                        .filter(source -> source.channel().size() > 1)
                        .isPresent())
                .toList();
        var leftOut = new ArrayList<String>();
        var ordered = new ArrayList<Part>();
        for (var part : moving) {
            if (moving.size() > 1 && part.start().isEmpty()) {
                leftOut.add(part.recording().name());
            } else {
                ordered.add(part);
            }
        }
        if (ordered.isEmpty()) {
            return Optional.empty();
        }
        ordered.sort(Comparator.comparing(part -> part.start().orElse(Instant.EPOCH)));
        var findings = new ArrayList<Finding>();
        leftOut.forEach(name -> findings.add(Finding.warning(
                "no-start-time",
                Place.in(name),
                "the recording has no date and time, so that it can't be joined to the others of its run",
                "give the run one recording, or recordings with dates")));
        return Optional.of(joined(legs(ordered), ordered.getFirst().start(), leftOut, findings));
    }

    private static List<Leg> legs(List<Part> ordered) {
        var first = ordered.getFirst();
        return ordered.stream()
                .map(part -> {
                    double beganS = part.recording().timesS()[0];
                    double sinceS = first.start().isEmpty()
                            ? 0
                            : Duration.between(first.start().get(), part.start().orElseThrow())
                                            .toNanos()
                                    / 1e9;
                    var source =
                            SpeedSource.best(part.recording()).orElseThrow().scaled();
                    return new Leg(part.recording(), source, sinceS - beganS);
                })
                .toList();
    }

    private static Journey joined(
            List<Leg> legs, Optional<Instant> begin, List<String> leftOut, List<Finding> findings) {
        int most = legs.stream().mapToInt(leg -> leg.source().channel().size()).sum();
        double[] times = new double[most];
        double[] values = new double[most];
        var walk = new JourneyWalk(legs.getFirst());
        int size = 0;
        for (var leg : legs) {
            double lastS = size == 0 ? Double.NEGATIVE_INFINITY : times[size - 1];
            var channel = leg.source().channel();
            double overlapS = lastS - (channel.timeS(0) + leg.shiftS());
            if (overlapS > OVERLAP_S) {
                findings.add(overlap(leg, overlapS));
            }
            walk.begin(leg);
            for (int i = 0; i < channel.size(); i++) {
                double timeS = channel.timeS(i) + leg.shiftS();
                if (timeS > lastS) {
                    times[size] = timeS;
                    values[size++] = Math.max(0, channel.value(i));
                    walk.take(timeS, values[size - 1]);
                }
            }
        }
        findings.addAll(walk.findings());
        var speed = new Channel(
                legs.getFirst().source().channel().kind(),
                "speed",
                "",
                new Channel.Series(java.util.Arrays.copyOf(times, size), java.util.Arrays.copyOf(values, size)));
        return new Journey(legs, begin, speed, walk.sums(), leftOut, findings);
    }

    private static Finding overlap(Leg leg, double overlapS) {
        return Finding.warning(
                "legs-overlap",
                Place.in(leg.recording().name()),
                String.format(
                        Locale.ROOT,
                        "its first %.0f s were recorded by the recording before it as well; they count once",
                        overlapS),
                "name only one of two recordings of the same stretch with the run");
    }

    /// How long it took in all, pauses among it.
    public double spanS() {
        return speed.timeS(speed.size() - 1) - speed.timeS(0);
    }
}
