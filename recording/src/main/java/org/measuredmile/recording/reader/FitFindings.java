package org.measuredmile.recording.reader;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedSet;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Place;

/// What is told of a FIT file once the whole of it is known, and what its listed devices say of its channels.
final class FitFindings {
    private static final int MOST_NAMES = 12;

    private static final Map<Integer, String> MESSAGES = Map.ofEntries(
            Map.entry(2, "device settings"),
            Map.entry(3, "user profile"),
            Map.entry(7, "zones"),
            Map.entry(8, "heart-rate zones"),
            Map.entry(9, "power zones"),
            Map.entry(12, "sport"),
            Map.entry(26, "workout"),
            Map.entry(27, "workout step"),
            Map.entry(31, "course"),
            Map.entry(32, "course point"),
            Map.entry(72, "training file"),
            Map.entry(78, "times between heart beats"),
            Map.entry(101, "lengths"),
            Map.entry(127, "connectivity"),
            Map.entry(128, "weather"),
            Map.entry(132, "heart-rate memory"),
            Map.entry(145, "memo"),
            Map.entry(161, "camera events"),
            Map.entry(169, "video frames"),
            Map.entry(174, "vehicle bus"),
            Map.entry(177, "receiver sentences"),
            Map.entry(178, "attitude"),
            Map.entry(184, "video"),
            Map.entry(187, "video clips"),
            Map.entry(208, "magnetometer"),
            Map.entry(216, "time in zones"));

    private final FitContent content;
    private final Remarks remarks;

    FitFindings(FitContent content, Remarks remarks) {
        this.content = content;
        this.remarks = remarks;
    }

    void tell(FitEra era, long firstNs, List<Channel> channels) {
        clock(era, firstNs);
        parts();
        sessions(era, firstNs);
        notTaken();
        names(
                FitTold.FIELDS_NOT_TAKEN,
                "fields that hold text or lists were left: ",
                content.records().notTaken());
        names(
                FitTold.UNKNOWN_FIELDS,
                "fields that are published nowhere were kept as numbers: ",
                content.records().unknown());
        sensors();
        speed(channels);
        battery(channels);
    }

    private void add(FitTold told, String message) {
        remarks.add(told.at(Place.in(remarks.source()), message));
    }

    private void clock(FitEra era, long firstNs) {
        if (era.lost() > 0) {
            remarks.add(FitTold.CLOCK_SET_MIDWAY.at(
                    Place.atByte(remarks.source(), era.firstLost()),
                    era.lost() + " samples have times of another clock than the rest; they have no time"));
        }
        if (!era.isAbsolute()) {
            add(
                    FitTold.CLOCK_NOT_SET,
                    "the instrument's clock was never set: it says "
                            + Instant.ofEpochSecond(FitClock.EPOCH_S).plusNanos(firstNs)
                            + ", which counts from switching on; the recording has no start");
        } else if (era.isCorrelated()) {
            add(
                    FitTold.CLOCK_BY_MESSAGE,
                    "times count from switching on; the file's own time-correlation message gives them their date");
        }
        content.clock()
                .localOffsetS()
                .ifPresent(offsetS -> add(
                        FitTold.LOCAL_TIME,
                        String.format(
                                Locale.ROOT,
                                "the instrument showed local time, %.2f h %s UTC; times here are UTC",
                                Math.abs(offsetS) / 3600.0,
                                offsetS < 0 ? "behind" : "ahead of")));
    }

    private void parts() {
        List<FitContent.Part> parts = content.parts();
        if (parts.size() > 1) {
            List<String> told = new ArrayList<>();
            for (int i = 0; i < parts.size() && i < MOST_NAMES; i++) {
                told.add((i + 1) + ": " + FitContent.typeName(parts.get(i).type()) + ", "
                        + parts.get(i).records() + " records");
            }
            add(
                    FitTold.CHAINED,
                    parts.size() + " files are chained in this one (" + String.join("; ", told)
                            + "); every one with records is in the recording, as segments of its own");
        }
        int type = parts.isEmpty() ? -1 : parts.getFirst().type();
        if (!FitContent.mayBeActivity(type)) {
            add(
                    FitTold.UNUSUAL_TYPE,
                    "the file says that it holds " + FitContent.typeName(type)
                            + ", yet it has records; they were read");
        }
    }

    private void sessions(FitEra era, long firstNs) {
        List<FitMarks.Span> sessions = content.marks().sessions();
        if (sessions.size() < 2) {
            return;
        }
        List<String> told = new ArrayList<>();
        for (FitMarks.Span session : sessions.subList(0, Math.min(sessions.size(), MOST_NAMES))) {
            long fromNs = era.trueNs(session.fromNs());
            if (fromNs != SampleTable.UNTIMED) {
                told.add(String.format(
                        Locale.ROOT,
                        "%s %.0f to %.0f s",
                        session.text(),
                        (fromNs - firstNs) / 1e9,
                        (fromNs - firstNs + session.toNs() - session.fromNs()) / 1e9));
            }
        }
        add(FitTold.SESSIONS, sessions.size() + " sessions: " + String.join(", ", told));
    }

    private void notTaken() {
        Map<Integer, long[]> notTaken = content.notTaken();
        if (notTaken.isEmpty()) {
            return;
        }
        long all = 0;
        List<String> told = new ArrayList<>();
        for (Map.Entry<Integer, long[]> each : notTaken.entrySet()) {
            all += each.getValue()[0];
            if (told.size() < MOST_NAMES) {
                String name = MESSAGES.getOrDefault(each.getKey(), "number " + each.getKey());
                told.add(name + " " + each.getValue()[0]);
            }
        }
        add(
                FitTold.NOT_TAKEN,
                all + " messages of " + notTaken.size() + " kinds hold nothing that a recording takes: "
                        + String.join(", ", told) + (notTaken.size() > MOST_NAMES ? " and others" : ""));
    }

    private void names(FitTold told, String before, SortedSet<String> names) {
        if (!names.isEmpty()) {
            List<String> some = names.stream().limit(MOST_NAMES).toList();
            add(told, before + String.join(", ", some) + (names.size() > MOST_NAMES ? " and others" : ""));
        }
    }

    private void sensors() {
        long samples = content.sensors().notCalibrated();
        if (samples > 0) {
            remarks.add(FitTold.NOT_CALIBRATED.at(
                    Place.atByte(remarks.source(), content.sensors().firstNotCalibrated()),
                    samples + " samples of an accelerometer or a gyroscope came before any calibration; they have no"
                            + " value"));
        }
    }

    /// Speed of the record message is by the wheel only where nothing else could have told it.
    ChannelKind kind(SampleTable.Column heading) {
        boolean plain = heading.kind() == ChannelKind.SPEED && heading.name().equals("speed");
        if (plain && content.devices().hasWheelSensor() && content.records().positions() == 0) {
            return ChannelKind.WHEEL_SPEED;
        }
        boolean battery = heading.kind() == ChannelKind.OTHER && heading.name().equals("battery_soc");
        return battery && content.devices().hasElectricBike() ? ChannelKind.STATE_OF_CHARGE : heading.kind();
    }

    /// Values in the unit of the kind that a column turned out to be of.
    Channel.Series scaled(SampleTable.Column heading, ChannelKind kind, Channel.Series series) {
        if (kind == heading.kind() || kind != ChannelKind.STATE_OF_CHARGE) {
            return series;
        }
        double[] shares = new double[series.values().length];
        for (int i = 0; i < shares.length; i++) {
            shares[i] = series.values()[i] / 100;
        }
        return new Channel.Series(series.timesS(), shares);
    }

    private void speed(List<Channel> channels) {
        boolean speed = channels.stream().anyMatch(channel -> channel.name().equals("speed"));
        if (speed && content.records().positions() > 0 && content.devices().hasWheelSensor()) {
            add(
                    FitTold.SPEED_SOURCE,
                    "the file lists a wheel sensor and holds positions; it does not say by which of them speed and"
                            + " distance are");
        }
    }

    private void battery(List<Channel> channels) {
        if (channels.stream()
                .anyMatch(channel ->
                        channel.kind() == ChannelKind.OTHER && channel.name().equals("battery_soc"))) {
            add(
                    FitTold.BATTERY_OF_WHAT,
                    "a state of charge is recorded, but no electric bike is listed: it may be the instrument's own");
        }
    }
}
