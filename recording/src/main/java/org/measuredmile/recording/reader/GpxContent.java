package org.measuredmile.recording.reader;

import java.util.Optional;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.reader.Decoding.Decoded;

/// What the elements of a GPX file mean, gathered one by one as they come.
final class GpxContent implements XmlContent {
    private final Remarks remarks;
    private final PointTable table;
    private final TimedMarks marks = new TimedMarks();

    private String creator = "";
    private boolean rootSeen;
    private @Nullable String otherRoot;
    private boolean inPoint;
    private boolean inWaypoint;
    private String waypointName = "";
    private OptionalLong waypointTimeNs = OptionalLong.empty();

    GpxContent(String name) {
        remarks = new Remarks(name);
        table = new PointTable(remarks);
        for (String counted : new String[] {"tracks", "segments", "waypoints", "routes"}) {
            table.countFromZero(counted);
        }
    }

    @Override
    public boolean wantsText() {
        return inPoint || inWaypoint;
    }

    @Override
    public boolean isFull() {
        return table.isFull();
    }

    @Override
    public void beginsWithBlanks() {
        remarks.count(Remark.BLANKS_FIRST, 1);
    }

    @Override
    public void open(String element, XmlTag tag) {
        if (!rootSeen) {
            rootSeen = true;
            if (element.equals("gpx")) {
                creator = tag.attribute("creator");
            } else {
                otherRoot = element;
            }
        }
        switch (element) {
            case "trkpt" -> openPoint(tag);
            case "trk" -> table.count("tracks");
            case "rte" -> table.count("routes");
            case "trkseg" -> {
                table.count("segments");
                table.beginSegment();
            }
            case "wpt" -> {
                table.count("waypoints");
                inWaypoint = true;
                waypointName = "";
                waypointTimeNs = OptionalLong.empty();
            }
            default -> {
                // Values are taken when their element closes.
            }
        }
    }

    private void openPoint(XmlTag tag) {
        inPoint = true;
        table.begin(tag.line());
        table.position(tag.number("lat"), tag.number("lon"), () -> tag.attribute("lat") + ", " + tag.attribute("lon"));
    }

    @Override
    public void close(String element, String parent, XmlText text) {
        switch (element) {
            case "trkpt" -> {
                if (inPoint) {
                    inPoint = false;
                    table.end();
                }
            }
            case "trkseg" -> table.endSegment();
            case "wpt" -> {
                inWaypoint = false;
                waypointTimeNs.ifPresent(timeNs -> marks.add(Mark.Kind.POINT, timeNs, timeNs, waypointName));
            }
            default -> {
                if (inPoint) {
                    take(element, parent.equals("trkpt"), text);
                } else if (inWaypoint && parent.equals("wpt")) {
                    takeOfWaypoint(element, text);
                }
            }
        }
    }

    private void take(String element, boolean ofThePointItself, XmlText text) {
        if (ofThePointItself && element.equals("time")) {
            table.time(text);
        } else if (ofThePointItself && element.equals("ele")) {
            table.value(PointValue.ALTITUDE, element, text);
        } else {
            PointValue.named(element).ifPresent(value -> table.value(value, element, text));
        }
    }

    private void takeOfWaypoint(String element, XmlText text) {
        if (element.equals("name")) {
            waypointName = text.toString();
        } else if (element.equals("time")) {
            waypointTimeNs = PointTable.quietTime(text);
        }
    }

    @Override
    public Decoding cutOff(long line, String what) {
        return table.broken(Remark.CUT_OFF, line, what).orElseGet(this::finish);
    }

    @Override
    public Decoding illFormed(long line, String why, boolean trusted) {
        return trusted
                ? table.broken(Remark.ILL_FORMED, line, why).orElseGet(this::finish)
                : table.refused(Remark.ILL_FORMED, line, why);
    }

    @Override
    public Decoding finish() {
        return refusal().orElseGet(() -> new Decoded(marks.on(table.recording(Format.GPX, creator))));
    }

    private Optional<Decoding> refusal() {
        Place file = Place.in(remarks.source());
        if (otherRoot != null) {
            return Optional.of(remarks.refuse(
                    "not-gpx",
                    file,
                    "the root element is <" + Remarks.quoted(otherRoot) + ">, not <gpx>",
                    "export the recording as GPX"));
        }
        if (table.points() == 0) {
            return Optional.of(remarks.refuse(
                    "no-track",
                    file,
                    "the file holds no track (" + table.counted("routes") + " routes, " + table.counted("waypoints")
                            + " waypoints): nothing was recorded in it",
                    "export the track of the ride, not a plan or a list of places"));
        }
        return table.nothingToComputeFrom();
    }
}
