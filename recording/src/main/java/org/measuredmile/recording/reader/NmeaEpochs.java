package org.measuredmile.recording.reader;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.TreeMap;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.reader.Decoding.Decoded;
import org.measuredmile.recording.reader.TimeText.DateOrder;

/// Gathers sentences into epochs: one row per time, whichever sentences gave it.
///
/// Dates: a sentence with a date fixes the day it belongs to; a time that falls by more than half a day begins the next
/// one; a date that comes late counts backwards to the first sentence.
final class NmeaEpochs {
    /// How many epochs back a late sentence may still belong to.
    private static final int STILL_OPEN = 32;

    private static final long HALF_DAY_NS = TimeText.DAY_NS / 2;
    /// A log does not run over a century; nanoseconds would not hold it.
    private static final long FARTHEST_NS = 36_525 * TimeText.DAY_NS;

    private static final long NO_DATE = Long.MIN_VALUE;

    /// The kinds of sentence that carry positions, in the order of preference for the track.
    private enum Fix {
        GGA,
        RMC,
        GNS,
        GLL
    }

    private final Remarks remarks;
    private final SampleTable table = new SampleTable();
    private final Map<ChannelKind, Integer> columns = new EnumMap<>(ChannelKind.class);
    private final Map<Fix, TrackColumns> tracks = new EnumMap<>(Fix.class);
    private final TreeMap<String, Long> counts = new TreeMap<>();
    private final Deque<Integer> open = new ArrayDeque<>();

    private String talker = "";
    private int row = -1;
    private long line;
    private long lastClockNs = -1;
    private long day;
    private long dayZero = NO_DATE;
    private long latestNs = Long.MIN_VALUE;
    private long lastUnreadableLine;

    NmeaEpochs(String name) {
        remarks = new Remarks(name);
    }

    boolean isFull() {
        return table.isFull();
    }

    void unreadable(long number, String text) {
        lastUnreadableLine = number;
        remarks.count(Remark.UNREADABLE_LINE, number, text);
    }

    void wrongChecksum(long number) {
        remarks.count(Remark.WRONG_CHECKSUM, number);
    }

    void take(String[] fields, long number, boolean checked) {
        line = number;
        String type = fields[0].substring(fields[0].length() - 3);
        counts.merge(type, 1L, Long::sum);
        if (!checked) {
            remarks.count(Remark.NO_CHECKSUM, number);
        }
        if (talker.isEmpty()) {
            talker = fields[0].substring(0, fields[0].length() - 3);
        }
        switch (type) {
            case "RMC" -> rmc(fields);
            case "GGA" -> gga(fields);
            case "GNS" -> gns(fields);
            case "GLL" -> gll(fields);
            case "VTG" -> vtg(fields);
            case "ZDA" -> zda(fields);
            default -> {
                // Sentences about satellites and datums say nothing about the ride.
            }
        }
        if (table.isFull()) {
            remarks.count(Remark.TOO_LONG, number, Long.toString(number));
        }
    }

    private void rmc(String[] fields) {
        OptionalLong date = field(fields, 9).length() == 6
                ? TimeText.date(field(fields, 9), DateOrder.DAY_FIRST)
                : OptionalLong.empty();
        if (!openEpoch(field(fields, 1), date)) {
            return;
        }
        boolean valid = field(fields, 2).equals("A") && !field(fields, 12).equals("N");
        if (!valid) {
            remarks.count(Remark.NO_FIX, line);
            return;
        }
        position(Fix.RMC, fields, 3);
        set(ChannelKind.SPEED, field(fields, 7), Unit.KNOT);
        set(ChannelKind.COURSE, field(fields, 8), Unit.ONE);
    }

    private void gga(String[] fields) {
        if (!openEpoch(field(fields, 1), OptionalLong.empty())) {
            return;
        }
        if (field(fields, 6).isEmpty() || field(fields, 6).equals("0")) {
            remarks.count(Remark.NO_FIX, line);
            return;
        }
        position(Fix.GGA, fields, 2);
        setIfAbsent(ChannelKind.SATELLITES, field(fields, 7), Unit.ONE);
        setIfAbsent(ChannelKind.DILUTION_OF_PRECISION, field(fields, 8), Unit.ONE);
        setIfAbsent(ChannelKind.ALTITUDE, field(fields, 9), Unit.METRE);
    }

    private void gns(String[] fields) {
        if (!openEpoch(field(fields, 1), OptionalLong.empty())) {
            return;
        }
        if (field(fields, 6).replace("N", "").isEmpty()) {
            remarks.count(Remark.NO_FIX, line);
            return;
        }
        position(Fix.GNS, fields, 2);
        setIfAbsent(ChannelKind.SATELLITES, field(fields, 7), Unit.ONE);
        setIfAbsent(ChannelKind.DILUTION_OF_PRECISION, field(fields, 8), Unit.ONE);
        setIfAbsent(ChannelKind.ALTITUDE, field(fields, 9), Unit.METRE);
    }

    private void gll(String[] fields) {
        if (!openEpoch(field(fields, 5), OptionalLong.empty())) {
            return;
        }
        if (!field(fields, 6).equals("A") || field(fields, 7).equals("N")) {
            remarks.count(Remark.NO_FIX, line);
            return;
        }
        position(Fix.GLL, fields, 1);
    }

    private void vtg(String[] fields) {
        if (row < 0 || field(fields, 9).equals("N")) {
            return;
        }
        setIfAbsent(ChannelKind.SPEED, field(fields, 5), Unit.KNOT);
        setIfAbsent(ChannelKind.COURSE, field(fields, 1), Unit.ONE);
    }

    private void zda(String[] fields) {
        String date = field(fields, 4) + "-" + field(fields, 3) + "-" + field(fields, 2);
        OptionalLong clock = TimeText.clock(field(fields, 1));
        if (clock.isPresent()) {
            follow(clock.getAsLong(), TimeText.date(date, DateOrder.YEAR_FIRST));
        }
    }

    private static String field(String[] fields, int index) {
        return index < fields.length ? fields[index].strip() : "";
    }

    /// Finds or makes the row of a time; false when the time cannot be read.
    private boolean openEpoch(String clockText, OptionalLong date) {
        OptionalLong clock = TimeText.clock(clockText);
        if (clock.isEmpty()) {
            remarks.count(clockText.isEmpty() ? Remark.NO_TIME : Remark.BAD_TIME, line, clockText);
            return false;
        }
        long timeNs = follow(clock.getAsLong(), date);
        if (Math.abs(timeNs) > FARTHEST_NS) {
            remarks.count(Remark.BAD_TIME, line, clockText);
            return false;
        }
        for (int candidate : open) {
            if (table.timeNs(candidate) == timeNs) {
                row = candidate;
                return true;
            }
        }
        row = table.addRow(timeNs, line, 0);
        open.addLast(row);
        if (open.size() > STILL_OPEN) {
            open.removeFirst();
        }
        if (timeNs < latestNs) {
            remarks.count(Remark.LATE_SENTENCES, line);
        }
        latestNs = Math.max(latestNs, timeNs);
        return true;
    }

    /// The time since the day that the first sentence was written on, in nanoseconds.
    private long follow(long clockNs, OptionalLong date) {
        long sentenceDay = day;
        if (lastClockNs >= 0 && clockNs < lastClockNs - HALF_DAY_NS) {
            sentenceDay = day + 1;
        } else if (lastClockNs >= 0 && clockNs > lastClockNs + HALF_DAY_NS && day > 0) {
            sentenceDay = day - 1;
        }
        if (date.isPresent()) {
            if (dayZero == NO_DATE) {
                dayZero = date.getAsLong() - sentenceDay;
            }
            sentenceDay = date.getAsLong() - dayZero;
        }
        if (sentenceDay >= day) {
            day = sentenceDay;
            lastClockNs = clockNs;
        }
        return sentenceDay * TimeText.DAY_NS + clockNs;
    }

    private void position(Fix fix, String[] fields, int from) {
        double latitude = degrees(field(fields, from), field(fields, from + 1), "N", "S");
        double longitude = degrees(field(fields, from + 2), field(fields, from + 3), "E", "W");
        if (!(Math.abs(latitude) <= 90) || !(Math.abs(longitude) <= 180)) {
            remarks.count(Remark.BAD_COORDINATES, line, field(fields, from) + ", " + field(fields, from + 2));
            return;
        }
        if (latitude == 0 && longitude == 0) {
            remarks.count(Remark.ZERO_COORDINATES, line);
            return;
        }
        tracks.computeIfAbsent(fix, key -> new TrackColumns()).add(latitude, longitude);
        put(ChannelKind.LATITUDE, latitude, false);
        put(ChannelKind.LONGITUDE, longitude, false);
    }

    /// Degrees of `dddmm.mmmm` with its hemisphere; NaN where it cannot be read.
    private static double degrees(String text, String hemisphere, String positive, String negative) {
        OptionalDouble number = NumberText.parse(text);
        boolean known = hemisphere.equals(positive) || hemisphere.equals(negative);
        if (number.isEmpty() || !known || !(number.getAsDouble() >= 0)) {
            return Double.NaN;
        }
        double whole = Math.floor(number.getAsDouble() / 100);
        double minutes = number.getAsDouble() - whole * 100;
        double degrees = minutes < 60 ? whole + minutes / 60 : Double.NaN;
        return hemisphere.equals(negative) ? -degrees : degrees;
    }

    private void set(ChannelKind kind, String text, Unit unit) {
        setValue(kind, text, unit, true);
    }

    private void setIfAbsent(ChannelKind kind, String text, Unit unit) {
        setValue(kind, text, unit, false);
    }

    private void setValue(ChannelKind kind, String text, Unit unit, boolean replace) {
        if (text.isEmpty()) {
            return;
        }
        OptionalDouble value = NumberText.parse(text);
        if (value.isEmpty()) {
            remarks.count(Remark.NOT_A_NUMBER, line, text);
        } else {
            put(kind, unit.toSi(value.getAsDouble()), replace);
        }
    }

    private void put(ChannelKind kind, double value, boolean replace) {
        int column = columns.computeIfAbsent(kind, key -> table.addColumn(key, key.id(), ""));
        if (replace || Double.isNaN(table.get(column, row))) {
            table.set(column, row, value);
        }
    }

    Decoding finish(boolean endsInsideLine) {
        if (endsInsideLine && lastUnreadableLine > line) {
            remarks.count(Remark.CUT_OFF, lastUnreadableLine, "the last sentence is not whole");
        }
        if (counts.isEmpty()) {
            return remarks.refuse(
                    "no-sentence",
                    Place.in(remarks.source()),
                    "no whole sentence with a right checksum was found",
                    "copy the log from the receiver again");
        }
        if (columns.isEmpty()) {
            return remarks.refuse(
                    "no-fix",
                    Place.in(remarks.source()),
                    "the receiver had no fix in any of " + table.rows() + " epochs: there is no position and no speed",
                    "wait for a fix before starting");
        }
        if (dayZero == NO_DATE) {
            remarks.count(Remark.DATE_UNKNOWN, 0);
        }
        counts.put("epochs", (long) table.rows());
        counts.put("wrong-checksum", remarks.counted(Remark.WRONG_CHECKSUM));
        counts.put("no-checksum", remarks.counted(Remark.NO_CHECKSUM));
        counts.put("unreadable", remarks.counted(Remark.UNREADABLE_LINE));
        boolean dated = dayZero != NO_DATE;
        var head = new RecordingAssembly.Head(
                Format.NMEA,
                talker.isEmpty() ? "" : "talker " + Remarks.quoted(talker),
                dated,
                dated ? dayZero * TimeText.DAY_NS : 0,
                true,
                table.rows(),
                counts,
                longestTrack());
        return new Decoded(RecordingAssembly.assemble(head, table, TimeOrder.sorted(table), remarks));
    }

    private org.measuredmile.recording.Track longestTrack() {
        TrackColumns best = new TrackColumns();
        for (TrackColumns track : tracks.values()) {
            if (track.size() > best.size()) {
                best = track;
            }
        }
        return best.track();
    }
}
