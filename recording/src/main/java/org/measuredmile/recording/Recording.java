package org.measuredmile.recording;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/// What an instrument recorded: channels on one strictly increasing time base.
///
/// Shape: `timesS` holds the time of every sample that was kept, strictly increasing, from 0; a channel's times are a
/// subset of it. `samples` counts what the file held, kept or not. `segments` are in order and do not overlap.
/// `counts` are the format's own numbers ("tracks", "segments", "points", "waypoints", "routes", "rows",
/// "wrong-checksum" …). `track` holds every position, also those without a time. `marks` are laps, pauses, presses of a
/// button and captions, in the order of the file. `columns` say what each column of a table was taken for; other
/// formats have none.
/// Unit: seconds from `start`; without a start, from the first sample. `zoneStated` is false when the file gave local
/// times without saying of which zone, and they were read as UTC.
public record Recording(
        String name,
        Format format,
        String device,
        Optional<Instant> start,
        boolean zoneStated,
        long samples,
        double[] timesS,
        List<Segment> segments,
        List<Channel> channels,
        SortedMap<String, Long> counts,
        List<Finding> findings,
        Track track,
        List<Mark> marks,
        List<ColumnMeaning> columns) {
    public Recording {
        segments = List.copyOf(segments);
        channels = List.copyOf(channels);
        counts = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(counts));
        findings = List.copyOf(findings);
        marks = List.copyOf(marks);
        columns = List.copyOf(columns);
    }

    /// A recording of a format without columns.
    public Recording(
            String name,
            Format format,
            String device,
            Optional<Instant> start,
            boolean zoneStated,
            long samples,
            double[] timesS,
            List<Segment> segments,
            List<Channel> channels,
            SortedMap<String, Long> counts,
            List<Finding> findings,
            Track track,
            List<Mark> marks) {
        this(
                name,
                format,
                device,
                start,
                zoneStated,
                samples,
                timesS,
                segments,
                channels,
                counts,
                findings,
                track,
                marks,
                List.of());
    }

    /// A recording that nobody marked.
    public Recording(
            String name,
            Format format,
            String device,
            Optional<Instant> start,
            boolean zoneStated,
            long samples,
            double[] timesS,
            List<Segment> segments,
            List<Channel> channels,
            SortedMap<String, Long> counts,
            List<Finding> findings,
            Track track) {
        this(
                name,
                format,
                device,
                start,
                zoneStated,
                samples,
                timesS,
                segments,
                channels,
                counts,
                findings,
                track,
                List.of());
    }

    /// A recording whose positions all stand in its channels.
    public Recording(
            String name,
            Format format,
            String device,
            Optional<Instant> start,
            boolean zoneStated,
            long samples,
            double[] timesS,
            List<Segment> segments,
            List<Channel> channels,
            SortedMap<String, Long> counts,
            List<Finding> findings) {
        this(
                name,
                format,
                device,
                start,
                zoneStated,
                samples,
                timesS,
                segments,
                channels,
                counts,
                findings,
                Track.of(channels, segments));
    }

    /// The first channel of a kind that has samples.
    public Optional<Channel> channel(ChannelKind kind) {
        return channels.stream()
                .filter(channel -> channel.kind() == kind && !channel.isEmpty())
                .findFirst();
    }

    /// Time from the first to the last sample, in seconds; 0 when there are fewer than two.
    public double spanS() {
        return timesS.length < 2 ? 0 : timesS[timesS.length - 1] - timesS[0];
    }

    /// The same recording with more findings.
    public Recording noting(List<Finding> more) {
        var all = new java.util.ArrayList<>(findings);
        all.addAll(more);
        return new Recording(
                name,
                format,
                device,
                start,
                zoneStated,
                samples,
                timesS,
                segments,
                channels,
                counts,
                all,
                track,
                marks,
                columns);
    }

    /// The same recording with these marks, in place of those it had.
    public Recording marking(List<Mark> these) {
        return new Recording(
                name,
                format,
                device,
                start,
                zoneStated,
                samples,
                timesS,
                segments,
                channels,
                counts,
                findings,
                track,
                these,
                columns);
    }

    /// The same recording with what its columns were taken for.
    public Recording reading(List<ColumnMeaning> these) {
        return new Recording(
                name,
                format,
                device,
                start,
                zoneStated,
                samples,
                timesS,
                segments,
                channels,
                counts,
                findings,
                track,
                marks,
                these);
    }

    /// Whether runs and figures may come of it: not of one that a finding refuses, as a course that was only
    /// planned.
    public boolean mayGiveFigures() {
        return findings.stream().noneMatch(finding -> finding.level() == Finding.Level.REFUSED);
    }

    /// The marks of one kind, in the order of the file.
    public List<Mark> marks(Mark.Kind kind) {
        return marks.stream().filter(mark -> mark.kind() == kind).toList();
    }
}
