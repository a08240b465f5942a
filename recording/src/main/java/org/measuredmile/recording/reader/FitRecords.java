package org.measuredmile.recording.reader;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import org.measuredmile.recording.ChannelKind;

/// The record messages: one sample a message, with positions, the instrument's own fields and those of applications.
final class FitRecords {
    static final int MESSAGE = 20;

    private static final int NO_SEMICIRCLES = Integer.MAX_VALUE;
    private static final int PACKED = 0xFFF;
    private static final int PACKED_ROLLOVER = 0x1000;

    private final Remarks remarks;
    private final FitDevelopers developers;
    private final SampleTable table = new SampleTable();
    private final Map<String, Integer> columns = new HashMap<>();
    private final Map<Integer, String> sources = new HashMap<>();
    private final SortedSet<String> unknown = new TreeSet<>();
    private final SortedSet<String> notTaken = new TreeSet<>();
    private final int latitude;
    private final int longitude;
    private int positions;
    private int segment;
    private int lastPackedDistance = -1;
    private double packedDistanceM;

    FitRecords(Remarks remarks, FitDevelopers developers) {
        this.remarks = remarks;
        this.developers = developers;
        latitude = table.addColumn(ChannelKind.LATITUDE, "position_lat", "°");
        longitude = table.addColumn(ChannelKind.LONGITUDE, "position_long", "°");
    }

    SampleTable table() {
        return table;
    }

    int positions() {
        return positions;
    }

    /// The application that a column comes of; empty for the instrument's own.
    String application(int column) {
        return sources.getOrDefault(column, "");
    }

    /// Published by nobody, kept under their numbers.
    SortedSet<String> unknown() {
        return unknown;
    }

    /// Fields that hold text or several values, and fields of applications that are not described.
    SortedSet<String> notTaken() {
        return notTaken;
    }

    void startSegment() {
        segment++;
    }

    /// The rows that hold a position, in the file's order.
    int[] positionRows() {
        int[] rows = new int[positions];
        int size = 0;
        for (int row = 0; row < table.rows() && size < positions; row++) {
            if (!Double.isNaN(table.get(latitude, row))) {
                rows[size++] = row;
            }
        }
        return rows;
    }

    /// Where, among those rows, a new segment begins.
    int[] segmentStarts(int[] rows) {
        int[] starts = new int[rows.length];
        int size = 0;
        for (int i = 0; i < rows.length; i++) {
            if (i == 0 || table.segment(rows[i]) != table.segment(rows[i - 1])) {
                starts[size++] = i;
            }
        }
        return Arrays.copyOf(starts, size);
    }

    /// A position's degrees north (0) or east (1) in those rows.
    double[] degrees(int[] rows, int axis) {
        double[] degrees = new double[rows.length];
        for (int i = 0; i < rows.length; i++) {
            degrees[i] = table.get(axis == 0 ? latitude : longitude, rows[i]);
        }
        return degrees;
    }

    /// A part of a chained file counts its packed distance from its own start.
    void startPart() {
        segment++;
        lastPackedDistance = -1;
    }

    /// Takes one message; `at` is where its fields begin, `offset` where it stands in the file.
    void take(FitDefinition definition, FitBytes bytes, long timeNs, long offset) {
        FitPlan plan = definition.plan();
        if (plan == null) {
            plan = plan(definition);
            definition.plan(plan);
        }
        int row = table.addRow(timeNs, offset, segment);
        if (timeNs == SampleTable.UNTIMED) {
            remarks.count(Remark.NO_TIME, offset);
        }
        ByteBuffer view = bytes.view(definition.bigEndian());
        int at = bytes.at() + 1;
        plan.apply(view, at, row);
        if (plan.latitudeAt >= 0 && plan.longitudeAt >= 0) {
            position(view.getInt(at + plan.latitudeAt), view.getInt(at + plan.longitudeAt), row, offset);
        }
        if (plan.packedAt >= 0) {
            packed(view, at + plan.packedAt, row);
        }
    }

    private void position(int north, int east, int row, long offset) {
        if (north == NO_SEMICIRCLES && east == NO_SEMICIRCLES) {
            return;
        }
        double northDegrees = north * FitField.DEGREES_A_SEMICIRCLE;
        double eastDegrees = east * FitField.DEGREES_A_SEMICIRCLE;
        if (north == NO_SEMICIRCLES || east == NO_SEMICIRCLES || Math.abs(northDegrees) > 90) {
            remarks.count(Remark.BAD_COORDINATES, offset, northDegrees + ", " + eastDegrees);
        } else if (north == 0 && east == 0) {
            remarks.count(Remark.ZERO_COORDINATES, offset);
        } else {
            positions++;
            table.set(latitude, row, northDegrees);
            table.set(longitude, row, eastDegrees);
        }
    }

    /// Twelve bits of speed in cm/s, then twelve bits of distance in sixteenths of a metre that start over at
    /// 256 m.
    private void packed(ByteBuffer view, int at, int row) {
        int bits = (view.get(at) & 0xFF) | ((view.get(at + 1) & 0xFF) << 8) | ((view.get(at + 2) & 0xFF) << 16);
        if (bits == 0xFF_FFFF) {
            return;
        }
        int speed = bits & PACKED;
        int distance = bits >>> 12;
        if (speed != PACKED) {
            table.set(column(FitField.of(6), "speed", ""), row, speed / 100.0);
        }
        int from = lastPackedDistance < 0 ? distance : lastPackedDistance;
        packedDistanceM += Math.floorMod(distance - from, PACKED_ROLLOVER) / 16.0;
        lastPackedDistance = distance;
        table.set(column(FitField.of(5), "distance", ""), row, packedDistanceM);
    }

    private FitPlan plan(FitDefinition definition) {
        FitDefinition.Fields fields = definition.fields();
        List<FitPlan.Step> plain = new ArrayList<>();
        List<FitPlan.Step> later = new ArrayList<>();
        int[] special = {-1, -1, -1};
        for (int i = 0; i < fields.size(); i++) {
            int number = fields.numbers()[i];
            FitBase base = FitBase.of(fields.types()[i]).orElse(FitBase.STRING);
            if (number <= FitField.LONGITUDE && base == FitBase.SINT32 && fields.sizes()[i] == 4) {
                special[number] = fields.places()[i];
            } else if (number == FitField.PACKED_SPEED_DISTANCE && fields.sizes()[i] == 3) {
                special[2] = fields.places()[i];
            } else if (base == FitBase.STRING || fields.sizes()[i] != base.width()) {
                notTaken.add(FitField.of(number).name());
            } else if (number != FitDefinition.TIMESTAMP) {
                FitField field = FitField.of(number);
                // A finer field of the same name comes after the plain one and stands in its place; a fraction is added
                // last of all.
                boolean fraction = number == FitField.FRACTIONAL_CADENCE;
                boolean finer = number == 73 || number == 78 || number == 52;
                int column = column(field, field.name(), "");
                var step = new FitPlan.Step(base, fields.places()[i], values(column), field, fraction);
                if (fraction) {
                    later.addLast(step);
                } else {
                    (finer ? later : plain).addFirst(step);
                }
                note(number);
            }
        }
        plain.addAll(later);
        developed(definition.developerFields(), plain);
        return new FitPlan(plain, new FitPlan.Special(special[0], special[1], special[2]));
    }

    private void note(int number) {
        if (!FitField.isKnown(number)) {
            unknown.add(FitField.of(number).name());
        }
    }

    private void developed(FitDefinition.Fields fields, List<FitPlan.Step> steps) {
        for (int i = 0; i < fields.size(); i++) {
            int application = fields.types()[i];
            int number = fields.numbers()[i];
            Optional<FitDevelopers.Described> described = developers.find(application, number);
            if (described.isEmpty()) {
                notTaken.add("developer-" + application + "-" + number + " (nowhere described)");
                continue;
            }
            FitField field = described.get().field();
            FitBase base = FitBase.of(described.get().baseType()).orElse(FitBase.STRING);
            if (base == FitBase.STRING || fields.sizes()[i] != base.width()) {
                notTaken.add(field.name());
                continue;
            }
            int column = column(
                    field,
                    application + "/" + number + "/" + field.name(),
                    described.get().application());
            steps.add(new FitPlan.Step(base, fields.places()[i], values(column), field, false));
        }
    }

    private DoubleColumn values(int column) {
        return table.columns().get(column).values();
    }

    private int column(FitField field, String key, String application) {
        Integer there = columns.get(key);
        if (there != null) {
            return there;
        }
        int column = table.addColumn(field.kind(), field.name(), field.unit());
        columns.put(key, column);
        if (!application.isEmpty()) {
            sources.put(column, application);
        }
        return column;
    }
}
