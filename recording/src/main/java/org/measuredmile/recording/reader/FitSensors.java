package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.measuredmile.recording.ChannelKind;

/// The messages of action cameras that hold samples finer than a second: satellite epochs, and blocks of samples of an
/// accelerometer, a gyroscope and a barometer, each sample with its own offset from the message's time.
///
/// A sensor's own numbers become values by the calibration that the file last gave for it:
/// factor / divisor · matrix · (number − shift − offset); without one they are kept as they are and told.
/// Source: the published profile's messages 160, 164, 165, 167, 209 and 210 and its formula for calibration, from
/// memory, held to a real file in which a camera at rest reads 9.8 m/s².
final class FitSensors {
    private static final int SATELLITE = 160;
    private static final int TURN_RATE = 164;
    private static final int ACCELERATION = 165;
    private static final int CALIBRATION_3D = 167;
    private static final int PRESSURE = 209;
    private static final int CALIBRATION = 210;

    private static final long MILLISECOND_NS = 1_000_000;
    private static final double STANDARD_GRAVITY = 9.80665;
    private static final double RADIANS_A_DEGREE = Math.PI / 180;
    private static final double WHOLE_ROTATION = 65_535;

    private final Remarks remarks;
    private final Stream satellite;
    private final Stream acceleration;
    private final Stream turnRate;
    private final Stream pressure;
    private final @Nullable Calibration[] calibrations = new @Nullable Calibration[4];
    private long notCalibrated;
    private long firstNotCalibrated;

    /// Samples of one kind of message; `device` says in words what measured them.
    record Stream(String device, SampleTable table, int[] columns) {}

    private record Calibration(double factor, double shift, double[] offsets, double[] matrix) {}

    FitSensors(Remarks remarks) {
        this.remarks = remarks;
        satellite = stream("satellite receiver", new FitField[] {
            new FitField(1, "position_lat", ChannelKind.LATITUDE, "°", 1, 0),
            new FitField(2, "position_long", ChannelKind.LONGITUDE, "°", 1, 0),
            new FitField(3, "enhanced_altitude", ChannelKind.ALTITUDE, "m", 5, -500),
            new FitField(4, "enhanced_speed", ChannelKind.SPEED, "m/s", 1000, 0),
            new FitField(5, "heading", ChannelKind.COURSE, "°", 100, 0),
            new FitField(7, "velocity_east", ChannelKind.OTHER, "m/s", 100, 0),
            new FitField(7, "velocity_north", ChannelKind.OTHER, "m/s", 100, 0),
            new FitField(7, "velocity_up", ChannelKind.OTHER, "m/s", 100, 0)
        });
        acceleration = stream("accelerometer", new FitField[] {
            new FitField(2, "accel_x", ChannelKind.ACCELERATION_X, "g", 1 / STANDARD_GRAVITY, 0),
            new FitField(3, "accel_y", ChannelKind.ACCELERATION_Y, "g", 1 / STANDARD_GRAVITY, 0),
            new FitField(4, "accel_z", ChannelKind.ACCELERATION_Z, "g", 1 / STANDARD_GRAVITY, 0)
        });
        turnRate = stream("gyroscope", new FitField[] {
            new FitField(2, "gyro_x", ChannelKind.TURN_RATE_X, "deg/s", 1 / RADIANS_A_DEGREE, 0),
            new FitField(3, "gyro_y", ChannelKind.TURN_RATE_Y, "deg/s", 1 / RADIANS_A_DEGREE, 0),
            new FitField(4, "gyro_z", ChannelKind.TURN_RATE_Z, "deg/s", 1 / RADIANS_A_DEGREE, 0)
        });
        pressure = stream("barometer", new FitField[] {new FitField(2, "baro_pres", ChannelKind.PRESSURE, "Pa", 1, 0)});
    }

    private static Stream stream(String device, FitField[] fields) {
        SampleTable table = new SampleTable();
        int[] columns = new int[fields.length];
        for (int i = 0; i < fields.length; i++) {
            columns[i] = table.addColumn(fields[i].kind(), fields[i].name(), fields[i].unit());
        }
        return new Stream(device, table, columns);
    }

    List<Stream> streams() {
        return List.of(satellite, acceleration, turnRate, pressure);
    }

    /// How many samples had no calibration, and where the first of them stood.
    long notCalibrated() {
        return notCalibrated;
    }

    long firstNotCalibrated() {
        return firstNotCalibrated;
    }

    /// Takes a message; false when it is none of these.
    boolean take(int number, FitMessage message) {
        switch (number) {
            case SATELLITE -> satelliteEpoch(message);
            case ACCELERATION -> block(message, acceleration, new Axes(0, 5, STANDARD_GRAVITY));
            case TURN_RATE -> block(message, turnRate, new Axes(1, 5, RADIANS_A_DEGREE));
            case PRESSURE -> block(message, pressure, new Axes(3, -1, 1));
            case CALIBRATION_3D, CALIBRATION -> calibrate(number, message);
            default -> {
                return false;
            }
        }
        return true;
    }

    private void satelliteEpoch(FitMessage message) {
        long timeNs = stampNs(message);
        if (timeNs == SampleTable.UNTIMED) {
            return;
        }
        int row = satellite.table.addRow(timeNs, message.offset(), 0);
        double north = message.number(1) * FitField.DEGREES_A_SEMICIRCLE;
        double east = message.number(2) * FitField.DEGREES_A_SEMICIRCLE;
        if (Math.abs(north) > 90 || Math.abs(east) > 180) {
            remarks.count(Remark.BAD_COORDINATES, message.offset(), north + ", " + east);
        } else if (north == 0 && east == 0) {
            remarks.count(Remark.ZERO_COORDINATES, message.offset());
        } else if (!Double.isNaN(north) && !Double.isNaN(east)) {
            satellite.table.set(0, row, north);
            satellite.table.set(1, row, east);
        }
        satellite.table.set(2, row, message.number(3) / 5 - 500);
        satellite.table.set(3, row, message.number(4) / 1000);
        satellite.table.set(4, row, message.number(5) / 100);
        for (int axis = 0; axis < 3; axis++) {
            satellite.table.set(5 + axis, row, message.number(7, axis) / 100);
        }
    }

    /// Which calibration a block needs, which field holds values that the instrument calibrated itself (−1:
    /// none), and the factor to SI.
    private record Axes(int sensor, int calibratedField, double toSi) {}

    private void block(FitMessage message, Stream stream, Axes axes) {
        long timeNs = stampNs(message);
        int samples = message.room(1);
        if (timeNs == SampleTable.UNTIMED) {
            return;
        }
        int axisCount = stream.columns.length;
        double[] values = new double[axisCount];
        for (int i = 0; i < samples; i++) {
            double offsetMs = message.counted(1, i);
            if (Double.isNaN(offsetMs)) {
                continue;
            }
            for (int axis = 0; axis < axisCount; axis++) {
                values[axis] = message.number(2 + axis, i);
            }
            int row = stream.table.addRow(timeNs + Math.round(offsetMs * MILLISECOND_NS), message.offset(), 0);
            boolean own = axes.calibratedField >= 0 && message.room(axes.calibratedField) > i;
            for (int axis = 0; axis < axisCount && own; axis++) {
                values[axis] = message.number(axes.calibratedField + axis, i);
            }
            if (own || calibrated(calibrations[axes.sensor], values, axes, message.offset())) {
                for (int axis = 0; axis < axisCount; axis++) {
                    stream.table.set(stream.columns[axis], row, values[axis] * axes.toSi);
                }
            }
        }
    }

    private boolean calibrated(@Nullable Calibration calibration, double[] values, Axes axes, long offset) {
        if (calibration == null) {
            // A barometer's numbers are pascals by the profile; another sensor's are counts of its own.
            if (axes.calibratedField < 0) {
                return true;
            }
            firstNotCalibrated = notCalibrated == 0 ? offset : firstNotCalibrated;
            notCalibrated++;
            return false;
        }
        int count = values.length;
        double[] plain = new double[count];
        for (int axis = 0; axis < count; axis++) {
            plain[axis] = values[axis] - calibration.shift - calibration.offsets[axis];
        }
        for (int axis = 0; axis < count; axis++) {
            double sum = 0;
            for (int by = 0; by < count; by++) {
                double weight = count == 1 ? 1 : calibration.matrix[3 * axis + by];
                sum += weight == 0 ? 0 : weight * plain[by];
            }
            values[axis] = calibration.factor * sum;
        }
        return true;
    }

    private void calibrate(int number, FitMessage message) {
        int sensor = message.whole(0, -1);
        double factor = message.number(1) / message.number(2);
        double shift = message.number(3);
        if (sensor < 0 || sensor >= calibrations.length || !Double.isFinite(factor) || !Double.isFinite(shift)) {
            return;
        }
        double[] offsets = new double[3];
        double[] matrix = new double[9];
        for (int i = 0; i < 3; i++) {
            offsets[i] = number == CALIBRATION && i > 0 ? 0 : message.number(4, i);
        }
        boolean oriented = number == CALIBRATION_3D;
        for (int i = 0; i < 9; i++) {
            matrix[i] = oriented ? message.number(5, i) / WHOLE_ROTATION : i % 4 == 0 ? 1 : 0;
        }
        calibrations[sensor] = new Calibration(factor, shift, offsets, matrix);
    }

    /// A message's time with its milliseconds.
    private static long stampNs(FitMessage message) {
        if (message.timeNs() == SampleTable.UNTIMED) {
            return SampleTable.UNTIMED;
        }
        double ms = message.counted(0, 0);
        return message.timeNs() + (Double.isNaN(ms) ? 0 : Math.round(ms * MILLISECOND_NS));
    }

    /// The streams that hold anything.
    List<Stream> filled() {
        List<Stream> filled = new ArrayList<>();
        for (Stream stream : streams()) {
            if (stream.table.rows() > 0) {
                filled.add(stream);
            }
        }
        return filled;
    }
}
