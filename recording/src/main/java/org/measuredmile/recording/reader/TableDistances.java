package org.measuredmile.recording.reader;

import java.util.Arrays;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.ColumnMeaning;

/// Sums over the rows of a table, in its own unknown units, that tell which units they are.
final class TableDistances {
    private static final double LONGEST_STEP_S = 10;
    private static final double NANOS = 1e9;

    private final SampleTable table;
    private final List<ColumnMeaning> meanings;
    private final int latitude;
    private final int longitude;

    /// The sum of a column against a way in metres, by what the way was measured.
    record Compared(double sum, double wayM, String by) {}

    /// `meanings` in the order of the table's columns.
    TableDistances(SampleTable table, List<ColumnMeaning> meanings) {
        this.table = table;
        this.meanings = meanings;
        this.latitude = columnOf(ChannelKind.LATITUDE);
        this.longitude = columnOf(ChannelKind.LONGITUDE);
    }

    private int columnOf(ChannelKind kind) {
        for (int i = 0; i < meanings.size(); i++) {
            if (meanings.get(i).kind() == kind) {
                return i;
            }
        }
        return -1;
    }

    /// The smallest, middle, 95th and largest hundredth of a column's size; zeros where it is empty.
    double[] quantiles(int column) {
        double[] all = new double[table.rows()];
        int size = 0;
        for (int row = 0; row < table.rows(); row++) {
            double value = Math.abs(table.get(column, row));
            if (!Double.isNaN(value)) {
                all[size++] = value;
            }
        }
        double[] sorted = Arrays.copyOf(all, size);
        Arrays.sort(sorted);
        return size == 0
                ? new double[4]
                : new double[] {sorted[0], sorted[size / 2], sorted[size * 95 / 100], sorted[size - 1]};
    }

    /// The sum of a speed column over time, against the way between positions, or against a distance column in
    /// metres.
    Compared speedAgainstWay(int speed) {
        double sum = 0;
        double wayM = 0;
        int before = -1;
        for (int row = 0; row < table.rows(); row++) {
            if (latitude < 0 || longitude < 0 || !isComplete(row, speed)) {
                continue;
            }
            if (before >= 0) {
                double stepS = (table.timeNs(row) - table.timeNs(before)) / NANOS;
                if (stepS > 0 && stepS <= LONGEST_STEP_S) {
                    sum += (table.get(speed, before) + table.get(speed, row)) / 2 * stepS;
                    wayM += stepM(before, row);
                }
            }
            before = row;
        }
        return new Compared(sum, wayM, "positions");
    }

    private boolean isComplete(int row, int other) {
        return table.timeNs(row) != SampleTable.UNTIMED
                && !Double.isNaN(table.get(other, row))
                && !Double.isNaN(table.get(latitude, row))
                && !Double.isNaN(table.get(longitude, row));
    }

    private double stepM(int from, int to) {
        double lat1 = table.get(latitude, from);
        double lon1 = table.get(longitude, from);
        double lat2 = table.get(latitude, to);
        double lon2 = table.get(longitude, to);
        boolean same = lat1 == lat2 && lon1 == lon2;
        return same ? 0 : Geodesic.WGS84.Inverse(lat1, lon1, lat2, lon2, GeodesicMask.DISTANCE).s12;
    }

    /// The rise of a distance column against the way between positions.
    Compared rise(int distance) {
        double first = Double.NaN;
        double last = Double.NaN;
        double wayM = 0;
        int before = -1;
        for (int row = 0; row < table.rows(); row++) {
            if (latitude < 0 || longitude < 0 || !isComplete(row, distance)) {
                continue;
            }
            if (before < 0) {
                first = table.get(distance, row);
            } else {
                wayM += stepM(before, row);
            }
            last = table.get(distance, row);
            before = row;
        }
        return new Compared(Double.isNaN(first) ? 0 : last - first, wayM, "positions");
    }

    /// The middle length of the acceleration vector, in the table's own unit; 0 where an axis is missing.
    double accelerationNorm() {
        int x = columnOf(ChannelKind.ACCELERATION_X);
        int y = columnOf(ChannelKind.ACCELERATION_Y);
        int z = columnOf(ChannelKind.ACCELERATION_Z);
        if (x < 0 || y < 0 || z < 0) {
            return 0;
        }
        double[] norms = new double[table.rows()];
        int size = 0;
        for (int row = 0; row < table.rows(); row++) {
            double norm = Math.sqrt(square(x, row) + square(y, row) + square(z, row));
            if (!Double.isNaN(norm)) {
                norms[size++] = norm;
            }
        }
        double[] sorted = Arrays.copyOf(norms, size);
        Arrays.sort(sorted);
        return size == 0 ? 0 : sorted[size / 2];
    }

    private double square(int column, int row) {
        return table.get(column, row) * table.get(column, row);
    }

    /// The largest turn rate about any axis, in the table's own unit.
    double largestTurnRate() {
        double largest = 0;
        for (int column = 0; column < meanings.size(); column++) {
            boolean turn = switch (meanings.get(column).kind()) {
                case TURN_RATE_X, TURN_RATE_Y, TURN_RATE_Z -> true;
                default -> false;
            };
            largest = turn ? Math.max(largest, quantiles(column)[3]) : largest;
        }
        return largest;
    }
}
