package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/// What the messages of a FIT file mean, gathered one by one as they come.
final class FitContent {
    private static final int ACTIVITY_FILE = 4;
    private static final int COURSE_FILE = 6;
    private static final int SOFTWARE = 35;
    private static final int CREATOR = 49;
    private static final int ACTIVITY = 34;
    private static final int CORRELATION = 162;
    private static final int MOST_PARTS = 1000;

    private final Remarks remarks;
    private final FitMessage message;
    private final FitClock clock = new FitClock();
    private final FitMarks marks = new FitMarks();
    private final FitDevices devices = new FitDevices();
    private final FitDevelopers developers = new FitDevelopers();
    private final FitRecords records;
    private final FitSensors sensors;
    private final TreeMap<String, Long> counts = new TreeMap<>();
    private final Map<Integer, long[]> notTaken = new TreeMap<>();
    private final List<Part> parts = new ArrayList<>();
    private int fileType = -1;
    private long recordsBefore;
    private long planned;
    private long compressed;
    private boolean breakPending;

    /// One of the files that a chained file is made of: its type (−1: not said) and how many records it holds.
    record Part(int type, long records) {}

    FitContent(Remarks remarks, FitBytes bytes) {
        this.remarks = remarks;
        message = new FitMessage(bytes);
        records = new FitRecords(remarks, developers);
        sensors = new FitSensors(remarks);
    }

    FitClock clock() {
        return clock;
    }

    FitMarks marks() {
        return marks;
    }

    FitDevices devices() {
        return devices;
    }

    FitRecords records() {
        return records;
    }

    FitSensors sensors() {
        return sensors;
    }

    List<Part> parts() {
        return parts;
    }

    /// Messages that nothing was taken of: their number, and how many there were.
    Map<Integer, long[]> notTaken() {
        return notTaken;
    }

    /// Points of a course, which somebody planned and nobody rode.
    long planned() {
        return planned;
    }

    long compressed() {
        return compressed;
    }

    /// Counts something that only the file's own numbers are made of.
    void count(String what) {
        counts.merge(what, 1L, Long::sum);
    }

    TreeMap<String, Long> counts() {
        return counts;
    }

    void startPart() {
        fileType = -1;
        recordsBefore = records.table().rows();
        breakPending = recordsBefore > 0;
        clock.startPart();
        marks.startPart();
        records.startPart();
    }

    void endPart() {
        if (parts.size() < MOST_PARTS) {
            parts.add(new Part(fileType, records.table().rows() - recordsBefore));
        }
    }

    /// Whether any field of an application was described since this was asked last.
    boolean take(FitDefinition definition, FitBytes bytes, long timeNs, boolean byHeader) {
        long offset = bytes.offset();
        int number = definition.message();
        if (number == FitRecords.MESSAGE) {
            record(definition, bytes, timeNs, offset);
            compressed += byHeader ? 1 : 0;
            return false;
        }
        message.lay(definition, bytes.at() + 1, timeNs, offset);
        switch (number) {
            case FitDevices.FILE -> {
                fileType = message.whole(0, -1);
                devices.takeFile(message);
            }
            case FitDevices.DEVICE -> devices.takeDevice(message);
            case FitMarks.SESSION -> marks.session(message);
            case FitMarks.LAP -> marks.lap(message);
            case FitMarks.EVENT -> {
                if (marks.event(message)) {
                    records.startSegment();
                }
            }
            case ACTIVITY -> clock.local(message.number(5), timeNs);
            case CORRELATION -> clock.correlate(message);
            case FitDevelopers.APPLICATION -> developers.takeApplication(message);
            case FitDevelopers.DESCRIPTION -> {
                return developers.takeDescription(message);
            }
            case SOFTWARE, CREATOR -> {
                // Versions of the instrument's program: nothing that a recording could hold.
            }
            default -> {
                if (!sensors.take(number, message)) {
                    notTaken.computeIfAbsent(number, key -> new long[1])[0]++;
                }
            }
        }
        return false;
    }

    private void record(FitDefinition definition, FitBytes bytes, long timeNs, long offset) {
        if (fileType == COURSE_FILE) {
            planned++;
            return;
        }
        if (breakPending && timeNs != SampleTable.UNTIMED) {
            marks.breakAt(timeNs);
            breakPending = false;
        }
        records.take(definition, bytes, timeNs, offset);
    }

    /// Whether as many cells are held as one file may have.
    boolean isFull() {
        long cells = cells(records.table());
        for (FitSensors.Stream stream : sensors.streams()) {
            cells += cells(stream.table());
        }
        return cells >= SampleTable.MOST_CELLS;
    }

    private static long cells(SampleTable table) {
        return (long) table.rows() * (table.columns().size() + 1);
    }

    /// How many samples there are of all kinds.
    long samples() {
        long samples = records.table().rows();
        for (FitSensors.Stream stream : sensors.streams()) {
            samples += stream.table().rows();
        }
        return samples;
    }

    Remarks remarks() {
        return remarks;
    }

    /// Whether the first part says that it is an activity, or says nothing.
    static boolean mayBeActivity(int type) {
        return type == ACTIVITY_FILE || type < 0;
    }

    /// What a type of file is called.
    ///
    /// Source: the published profile's list of file types, from memory.
    static String typeName(int type) {
        return switch (type) {
            case -1 -> "a file of no stated type";
            case 1 -> "a device's abilities";
            case 2 -> "settings";
            case 3 -> "sport settings";
            case ACTIVITY_FILE -> "an activity";
            case 5 -> "a workout plan";
            case COURSE_FILE -> "a course to follow";
            case 7 -> "schedules";
            case 8 -> "saved locations";
            case 9 -> "body weights";
            case 10 -> "totals";
            case 11 -> "goals";
            case 14 -> "blood pressures";
            case 15, 28, 32 -> "a day's monitoring";
            case 20 -> "a summary of an activity";
            case 34, 35 -> "segments to race on";
            default -> "a file of type " + type;
        };
    }
}
