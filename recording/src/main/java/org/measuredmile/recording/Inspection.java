package org.measuredmile.recording;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/// What is in a recording, at a glance.
///
/// Unit: metres and seconds. `clockSeconds` runs from the first to the last sample; `ridingSeconds` counts steps
/// without
/// a gap whose mean speed is over half a metre a second. `distanceMetres` is by `distanceSource`; `trackDistanceMetres`
/// is the sum of WGS-84 geodesics within segments, unfiltered and without height. `ascentMetres` counts rises over a
/// hysteresis of 3 m where pressure was recorded and of 10 m where it was not. Times in gaps and runs are seconds from
/// the start. `runs` are what the trials propose; this record only carries them. `marks` are laps, pauses and presses
/// of
/// a
/// button, in the order of the file.
public record Inspection(
        String file,
        String format,
        String device,
        Optional<Instant> startTime,
        boolean zoneStated,
        long samples,
        double clockSeconds,
        OptionalDouble ridingSeconds,
        OptionalDouble distanceMetres,
        String distanceSource,
        OptionalDouble trackDistanceMetres,
        OptionalDouble ascentMetres,
        List<ChannelSummary> channels,
        List<Gap> gaps,
        List<ProposedRun> runs,
        List<Finding> findings,
        List<Mark> marks) {

    private static final int MOST_GAPS = 1000;

    /// A channel: its own name, the unit that its values are in, how many there are, and how many a second.
    public record ChannelSummary(String name, String kind, String unit, int samples, double ratePerSecond) {}

    /// A stretch without samples that is longer than the recording's own steps.
    public record Gap(double fromS, double toS) {}

    /// A run that a trial found in the recording, for a person to confirm, move or reject.
    public record ProposedRun(String trial, String variant, double fromS, double toS, String why) {}

    public Inspection {
        channels = List.copyOf(channels);
        gaps = List.copyOf(gaps);
        runs = List.copyOf(runs);
        findings = List.copyOf(findings);
        marks = List.copyOf(marks);
    }

    /// Inspects a recording; `runs` come from the trials, or are empty.
    public static Inspection of(Recording recording, List<ProposedRun> runs) {
        Fixes fixes = Fixes.of(recording);
        Travel travel = Travel.of(recording, fixes);
        // A day's reduction may have noted them before.
        Set<Finding> findings = new LinkedHashSet<>(recording.findings());
        findings.addAll(CrossChecks.of(recording, fixes, travel));
        return new Inspection(
                recording.name(),
                recording.format().title(),
                recording.device(),
                recording.start(),
                recording.zoneStated(),
                recording.samples(),
                recording.spanS(),
                travel.ridingS(),
                travel.bestM(),
                travel.bestSource(),
                recording.track().lengthM(),
                ascentM(recording),
                recording.channels().stream().map(Inspection::summary).toList(),
                gaps(recording, travel.gapLimitS()),
                runs,
                List.copyOf(findings),
                recording.marks());
    }

    private static ChannelSummary summary(Channel channel) {
        double spanS = channel.size() < 2 ? 0 : channel.timeS(channel.size() - 1) - channel.timeS(0);
        double rate = spanS > 0 ? (channel.size() - 1) / spanS : 0;
        boolean plain = channel.kind() == ChannelKind.OTHER;
        String unit = plain ? channel.writtenUnit() : channel.kind().unitSymbol();
        return new ChannelSummary(channel.name(), channel.kind().id(), unit, channel.size(), rate);
    }

    private static List<Gap> gaps(Recording recording, double limitS) {
        List<Gap> gaps = new ArrayList<>();
        double[] timesS = recording.timesS();
        for (int i = 1; i < timesS.length && gaps.size() < MOST_GAPS; i++) {
            if (timesS[i] - timesS[i - 1] > limitS) {
                gaps.add(new Gap(timesS[i - 1], timesS[i]));
            }
        }
        return gaps;
    }

    private static OptionalDouble ascentM(Recording recording) {
        return recording
                .channel(ChannelKind.ALTITUDE)
                .map(altitude -> OptionalDouble.of(Ascent.risesM(altitude, Ascent.hysteresisM(recording))))
                .orElse(OptionalDouble.empty());
    }
}
