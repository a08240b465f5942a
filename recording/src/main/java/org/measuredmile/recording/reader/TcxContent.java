package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.Decoding.Decoded;

/// What the elements of a training file mean, gathered one by one as they come.
final class TcxContent implements XmlContent {
    private static final String ROOT = "TrainingCenterDatabase";

    private final Remarks remarks;
    private final PointTable table;
    private final TimedMarks marks = new TimedMarks();
    private final TcxLaps laps = new TcxLaps(marks);
    private final List<Finding> findings = new ArrayList<>();

    private String device = "";
    private boolean rootSeen;
    private @Nullable String otherRoot;
    private long courseLine;
    private boolean inPoint;
    private boolean sensorAbsent;
    private double north = Double.NaN;
    private double east = Double.NaN;
    private String northText = "";
    private String eastText = "";
    private boolean positionGiven;
    private double distanceBeforeM = Double.NaN;
    private OptionalLong pausedSinceNs = OptionalLong.empty();
    private OptionalLong pausedUntilNs = OptionalLong.empty();
    private String placeName = "";
    private OptionalLong placeTimeNs = OptionalLong.empty();

    TcxContent(String name) {
        remarks = new Remarks(name);
        table = new PointTable(remarks);
        for (String counted : new String[] {"activities", "courses", "laps", "tracks"}) {
            table.countFromZero(counted);
        }
    }

    @Override
    public boolean wantsText() {
        return true;
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
            otherRoot = element.equals(ROOT) ? null : element;
        }
        switch (element) {
            case "Trackpoint" -> openPoint(tag);
            case "Track" -> {
                table.count("tracks");
                table.beginSegment();
            }
            case "Lap" -> {
                table.count("laps");
                laps.open();
            }
            case "Activity" -> table.count("activities");
            case "Course" -> {
                table.count("courses");
                courseLine = courseLine == 0 ? tag.line() : courseLine;
            }
            case "CoursePoint" -> {
                placeName = "";
                placeTimeNs = OptionalLong.empty();
            }
            default -> {
                // Values are taken when their element closes.
            }
        }
    }

    private void openPoint(XmlTag tag) {
        inPoint = true;
        sensorAbsent = false;
        positionGiven = false;
        table.begin(tag.line());
    }

    @Override
    public void close(String element, String parent, XmlText text) {
        if (inPoint) {
            if (element.equals("Trackpoint")) {
                closePoint();
            } else {
                take(element, parent, text);
            }
            return;
        }
        switch (element) {
            case "Track" -> table.endSegment();
            case "Lap" -> laps.close();
            case "TotalTimeSeconds", "DistanceMeters" -> {
                if (parent.equals("Lap")) {
                    laps.total(element, text);
                }
            }
            case "Name" -> {
                if (parent.equals("Creator") && device.isEmpty()) {
                    device = text.toString();
                } else if (parent.equals("CoursePoint")) {
                    placeName = text.toString();
                }
            }
            case "Time" -> {
                if (parent.equals("CoursePoint")) {
                    placeTimeNs = PointTable.quietTime(text);
                }
            }
            case "CoursePoint" -> placeTimeNs.ifPresent(at -> marks.add(Mark.Kind.POINT, at, at, placeName));
            default -> {
                // The rest describes the instrument's own plans and settings.
            }
        }
    }

    private void take(String element, String parent, XmlText text) {
        if (parent.equals("Trackpoint")) {
            takeOfThePointItself(element, text);
        } else if (parent.equals("Position")) {
            takePosition(element, text);
        } else if (parent.equals("HeartRateBpm")) {
            if (element.equals("Value")) {
                table.value(PointValue.HEART_RATE, "HeartRateBpm", text);
            }
        } else {
            PointValue.named(element).ifPresent(value -> table.value(value, element, text));
        }
    }

    private void takeOfThePointItself(String element, XmlText text) {
        switch (element) {
            case "Time" -> table.time(text);
            case "AltitudeMeters" -> table.value(PointValue.ALTITUDE, element, text);
            case "DistanceMeters" -> table.value(PointValue.DISTANCE, element, text);
            case "Cadence" -> table.value(PointValue.CADENCE, element, text);
            case "SensorState" -> sensorAbsent = text.toString().equalsIgnoreCase("Absent");
            default -> {
                // Position and extensions were taken by what stands in them.
            }
        }
    }

    private void takePosition(String element, XmlText text) {
        if (!positionGiven) {
            positionGiven = true;
            north = Double.NaN;
            east = Double.NaN;
            northText = "";
            eastText = "";
        }
        double value = text.number();
        if (element.equals("LatitudeDegrees")) {
            north = value;
            northText = Double.isNaN(value) ? text.toString() : "";
        } else if (element.equals("LongitudeDegrees")) {
            east = value;
            eastText = Double.isNaN(value) ? text.toString() : "";
        }
    }

    private void closePoint() {
        inPoint = false;
        if (positionGiven) {
            table.position(north, east, () -> said(north, northText) + ", " + said(east, eastText));
        }
        if (sensorAbsent && table.has(ChannelKind.CADENCE)) {
            table.withdraw(ChannelKind.CADENCE);
            remarks.count(Remark.SENSOR_ABSENT, table.line());
        }
        if (table.timeNs() != SampleTable.UNTIMED) {
            notePause(!positionGiven && table.isBare());
            noteDistance();
            laps.sample(table.timeNs());
        }
        table.end();
    }

    private static String said(double value, String text) {
        return Double.isNaN(value) ? text : Double.toString(value);
    }

    /// A point with nothing but a time is how an instrument writes that it was stopped: successive ones are one
    /// pause, which lasts until the next point that holds anything.
    private void notePause(boolean bare) {
        if (bare) {
            pausedSinceNs = pausedSinceNs.isPresent() ? pausedSinceNs : OptionalLong.of(table.timeNs());
            pausedUntilNs = OptionalLong.of(table.timeNs());
        } else if (pausedSinceNs.isPresent()) {
            marks.add(Mark.Kind.PAUSE, pausedSinceNs.getAsLong(), table.timeNs(), "");
            pausedSinceNs = OptionalLong.empty();
        }
    }

    private void noteDistance() {
        double distanceM = table.value(ChannelKind.DISTANCE);
        if (distanceM < distanceBeforeM) {
            remarks.count(Remark.DISTANCE_BACK, table.line(), "from " + distanceBeforeM + " m to " + distanceM + " m");
        }
        distanceBeforeM = Double.isNaN(distanceM) ? distanceBeforeM : distanceM;
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
        Optional<Decoding> refusal = refusal();
        if (refusal.isPresent()) {
            return refusal.get();
        }
        laps.close();
        if (pausedSinceNs.isPresent() && pausedUntilNs.isPresent()) {
            marks.add(Mark.Kind.PAUSE, pausedSinceNs.getAsLong(), pausedUntilNs.getAsLong(), "");
        }
        Recording recording = marks.on(table.recording(Format.TCX, device));
        if (courseLine > 0) {
            findings.add(Finding.refused(
                    "planned-course",
                    Place.atLine(remarks.source(), courseLine),
                    "the file holds a course that was planned: nobody rode it and its times are made up, so that no "
                            + "run and no figure comes of it",
                    "export the activity and not the course"));
        }
        laps.disagreement(recording).ifPresent(findings::add);
        return new Decoded(findings.isEmpty() ? recording : recording.noting(findings));
    }

    private Optional<Decoding> refusal() {
        Place file = Place.in(remarks.source());
        if (otherRoot != null) {
            return Optional.of(remarks.refuse(
                    "not-tcx",
                    file,
                    "the root element is <" + Remarks.quoted(otherRoot) + ">, not <" + ROOT + ">",
                    "export the recording as TCX"));
        }
        if (table.points() == 0) {
            return Optional.of(remarks.refuse(
                    "no-track",
                    file,
                    "the file holds no track point (" + table.counted("activities") + " activities, "
                            + table.counted("laps") + " laps): nothing was recorded in it",
                    "export the activity with its track"));
        }
        return table.nothingToComputeFrom();
    }
}
