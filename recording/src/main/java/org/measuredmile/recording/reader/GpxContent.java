package org.measuredmile.recording.reader;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.TreeMap;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.reader.Decoding.Decoded;
import org.measuredmile.recording.reader.TimeText.DateOrder;

/// What the elements of a GPX file mean, gathered one by one as they come.
final class GpxContent {
    /// A value that a track point may carry: what it is and the unit that the format gives it.
    private record Carried(ChannelKind kind, Unit unit) {}

    private static final Map<String, Carried> CARRIED = Map.ofEntries(
            Map.entry("ele", new Carried(ChannelKind.ALTITUDE, Unit.METRE)),
            Map.entry("speed", new Carried(ChannelKind.SPEED, Unit.METRE_PER_SECOND)),
            Map.entry("course", new Carried(ChannelKind.COURSE, Unit.ONE)),
            Map.entry("hr", new Carried(ChannelKind.HEART_RATE, Unit.PER_MINUTE)),
            Map.entry("heartrate", new Carried(ChannelKind.HEART_RATE, Unit.PER_MINUTE)),
            Map.entry("cad", new Carried(ChannelKind.CADENCE, Unit.PER_MINUTE)),
            Map.entry("cadence", new Carried(ChannelKind.CADENCE, Unit.PER_MINUTE)),
            Map.entry("power", new Carried(ChannelKind.POWER, Unit.WATT)),
            Map.entry("watts", new Carried(ChannelKind.POWER, Unit.WATT)),
            Map.entry("powerinwatts", new Carried(ChannelKind.POWER, Unit.WATT)),
            Map.entry("atemp", new Carried(ChannelKind.AIR_TEMPERATURE, Unit.DEGREE_CELSIUS)),
            Map.entry("temp", new Carried(ChannelKind.AIR_TEMPERATURE, Unit.DEGREE_CELSIUS)),
            Map.entry("temperature", new Carried(ChannelKind.AIR_TEMPERATURE, Unit.DEGREE_CELSIUS)),
            Map.entry("sat", new Carried(ChannelKind.SATELLITES, Unit.ONE)),
            Map.entry("hdop", new Carried(ChannelKind.DILUTION_OF_PRECISION, Unit.ONE)));

    private final Remarks remarks;
    private final SampleTable table = new SampleTable();
    private final TrackColumns track = new TrackColumns();
    private final Map<ChannelKind, Integer> columns = new java.util.EnumMap<>(ChannelKind.class);
    private final TreeMap<String, Long> counts = new TreeMap<>();
    private final Deque<String> path = new ArrayDeque<>();
    private final int latitude;
    private final int longitude;

    private String creator = "";
    private @Nullable String otherRoot;
    private int segment = -1;
    private long pointsInSegment;
    private boolean inPoint;
    private long pointLine;
    private long pointTimeNs;
    private final double[] point = new double[ChannelKind.values().length];
    private boolean zoneStated = true;

    GpxContent(String name) {
        remarks = new Remarks(name);
        latitude = table.addColumn(ChannelKind.LATITUDE, "lat", "");
        longitude = table.addColumn(ChannelKind.LONGITUDE, "lon", "");
        for (String counted : new String[] {"tracks", "segments", "points", "waypoints", "routes"}) {
            counts.put(counted, 0L);
        }
    }

    boolean wantsText() {
        return inPoint;
    }

    boolean isFull() {
        return table.isFull();
    }

    void open(String element, XMLStreamReader xml) {
        if (path.isEmpty()) {
            if (element.equals("gpx")) {
                creator = attribute(xml, "creator");
            } else if (otherRoot == null) {
                otherRoot = element;
            }
        }
        path.push(element);
        switch (element) {
            case "trk" -> count("tracks");
            case "rte" -> count("routes");
            case "wpt" -> count("waypoints");
            case "trkseg" -> openSegment();
            case "trkpt" -> openPoint(xml);
            default -> {
                // Values are taken when their element closes.
            }
        }
    }

    void close(String element, String text) {
        if (element.equals("trkpt")) {
            closePoint();
        } else if (element.equals("trkseg") && pointsInSegment == 0) {
            remarks.count(Remark.EMPTY_SEGMENT, 0);
        } else if (inPoint) {
            take(element, text);
        }
        path.poll();
    }

    private void openSegment() {
        count("segments");
        segment++;
        pointsInSegment = 0;
        track.startSegment();
    }

    private void openPoint(XMLStreamReader xml) {
        count("points");
        pointsInSegment++;
        inPoint = true;
        pointLine = xml.getLocation().getLineNumber();
        pointTimeNs = SampleTable.UNTIMED;
        java.util.Arrays.fill(point, Double.NaN);
        String lat = attribute(xml, "lat");
        String lon = attribute(xml, "lon");
        OptionalDouble north = NumberText.parse(lat.strip());
        OptionalDouble east = NumberText.parse(lon.strip());
        if (north.isEmpty()
                || east.isEmpty()
                || !(Math.abs(north.getAsDouble()) <= 90)
                || !(Math.abs(east.getAsDouble()) <= 180)) {
            remarks.count(Remark.BAD_COORDINATES, pointLine, lat + ", " + lon);
        } else if (north.getAsDouble() == 0 && east.getAsDouble() == 0) {
            remarks.count(Remark.ZERO_COORDINATES, pointLine);
        } else {
            point[ChannelKind.LATITUDE.ordinal()] = north.getAsDouble();
            point[ChannelKind.LONGITUDE.ordinal()] = east.getAsDouble();
            track.add(north.getAsDouble(), east.getAsDouble());
        }
    }

    private void take(String element, String text) {
        boolean ofThePointItself = path.size() >= 2 && isParent("trkpt");
        if (element.equals("time")) {
            if (ofThePointItself) {
                takeTime(text);
            }
            return;
        }
        Carried carried = CARRIED.get(element.toLowerCase(java.util.Locale.ROOT));
        if (carried == null || (carried.kind == ChannelKind.ALTITUDE && !ofThePointItself)) {
            return;
        }
        OptionalDouble value = NumberText.parse(text);
        if (value.isEmpty()) {
            boolean height = carried.kind == ChannelKind.ALTITUDE;
            if (height || !text.isEmpty()) {
                remarks.count(height ? Remark.EMPTY_ELEVATION : Remark.NOT_A_NUMBER, pointLine, text);
            }
        } else if (NoDataMark.is(carried.kind, value.getAsDouble())) {
            remarks.count(Remark.NO_DATA_MARK, pointLine, element + " " + text);
        } else if (Double.isNaN(point[carried.kind.ordinal()])) {
            point[carried.kind.ordinal()] = carried.unit.toSi(value.getAsDouble());
        }
    }

    private boolean isParent(String name) {
        var inside = path.iterator();
        inside.next();
        return inside.next().equals(name);
    }

    private void takeTime(String text) {
        OptionalLong time = TimeText.dateTime(text, DateOrder.YEAR_FIRST);
        if (time.isEmpty()) {
            remarks.count(Remark.BAD_TIME, pointLine, text);
            return;
        }
        pointTimeNs = time.getAsLong();
        if (zoneStated && !TimeText.statesZone(text)) {
            zoneStated = false;
            remarks.count(Remark.ZONE_NOT_STATED, pointLine);
        }
    }

    private void closePoint() {
        inPoint = false;
        if (pointTimeNs == SampleTable.UNTIMED) {
            remarks.count(Remark.NO_TIME, pointLine);
            return;
        }
        int row = table.addRow(pointTimeNs, pointLine, Math.max(segment, 0));
        table.set(latitude, row, point[ChannelKind.LATITUDE.ordinal()]);
        table.set(longitude, row, point[ChannelKind.LONGITUDE.ordinal()]);
        for (ChannelKind carried : ChannelKind.values()) {
            double value = point[carried.ordinal()];
            if (!Double.isNaN(value) && carried != ChannelKind.LATITUDE && carried != ChannelKind.LONGITUDE) {
                int column = columns.computeIfAbsent(carried, kind -> table.addColumn(kind, kind.id(), ""));
                table.set(column, row, value);
            }
        }
        if (table.isFull()) {
            remarks.count(Remark.TOO_LONG, pointLine, Long.toString(pointLine));
        }
    }

    private void count(String what) {
        counts.merge(what, 1L, Long::sum);
    }

    private long counted(String what) {
        return counts.getOrDefault(what, 0L);
    }

    private static String attribute(XMLStreamReader xml, String name) {
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            if (xml.getAttributeLocalName(i).equals(name)) {
                return xml.getAttributeValue(i);
            }
        }
        return "";
    }

    /// The file ended inside an element: what was read stands, if there is anything to stand on.
    Decoding cutOff(long line, String what) {
        if (table.rows() >= 2) {
            remarks.count(Remark.CUT_OFF, line, what);
            return finish();
        }
        return remarks.refuse(
                "cut-off",
                Place.atLine(remarks.source(), line),
                "the file ends in the middle (" + what + "), after " + table.rows() + " points with a time",
                "copy the file from the instrument again");
    }

    /// The file is no XML from a place on: it was written or changed by something that cannot be trusted with the
    /// rest.
    Decoding illFormed(long line, String why) {
        return remarks.refuse(
                "ill-formed",
                line > 0 ? Place.atLine(remarks.source(), line) : Place.in(remarks.source()),
                "not well-formed XML: " + why + " (" + counted("points")
                        + " points had been read; none of them was kept)",
                "export the recording again, or mend the file at the place named");
    }

    Decoding finish() {
        Optional<Decoding> refusal = refusal();
        if (refusal.isPresent()) {
            return refusal.get();
        }
        var head = new RecordingAssembly.Head(
                Format.GPX, Remarks.quoted(creator), true, 0, zoneStated, counted("points"), counts, track.track());
        return new Decoded(RecordingAssembly.assemble(head, table, TimeOrder.of(table), remarks));
    }

    private Optional<Decoding> refusal() {
        Place file = Place.in(remarks.source());
        long points = counted("points");
        if (otherRoot != null) {
            return Optional.of(GpxReader.notGpx(remarks, otherRoot));
        }
        if (points == 0) {
            return Optional.of(remarks.refuse(
                    "no-track",
                    file,
                    "the file holds no track (" + counted("routes") + " routes, " + counted("waypoints")
                            + " waypoints): nothing was recorded in it",
                    "export the track of the ride, not a plan or a list of places"));
        }
        if (table.rows() == 0) {
            return Optional.of(remarks.refuse(
                    "no-times",
                    file,
                    "none of " + points + " track points has a time: nothing can be computed from them",
                    "export the recording with times"));
        }
        if (track.size() == 0 && columns.isEmpty()) {
            return Optional.of(remarks.refuse(
                    "no-samples",
                    file,
                    "none of " + points + " track points has a position or a value that can be read",
                    "look at the points named below, and export the recording again"));
        }
        return Optional.empty();
    }
}
