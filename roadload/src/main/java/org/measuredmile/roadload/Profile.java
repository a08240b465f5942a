package org.measuredmile.roadload;

/// A course as the wheel meets it: heights on a grid of distances.
///
/// Unit: metres along the road and above any level.
/// Shape: both arrays of the same length, at least two; distances rising from 0. Between grid points the road is
/// straight.
/// Error: IllegalArgumentException when that is broken, or where the road would be steeper than vertical.
public final class Profile {
    private final double[] distancesM;
    private final double[] heightsM;

    public Profile(double[] distancesM, double[] heightsM) {
        if (distancesM.length != heightsM.length || distancesM.length < 2 || distancesM[0] != 0) {
            throw new IllegalArgumentException(distancesM.length + " distances, " + heightsM.length + " heights");
        }
        for (int i = 1; i < distancesM.length; i++) {
            double step = distancesM[i] - distancesM[i - 1];
            if (!(step > 0) || !(Math.abs(heightsM[i] - heightsM[i - 1]) < step)) {
                throw new IllegalArgumentException("step " + i + " of " + step + " m");
            }
        }
        this.distancesM = distancesM.clone();
        this.heightsM = heightsM.clone();
    }

    /// An even slope: length along the road and rise, in metres.
    public static Profile even(double lengthM, double riseM) {
        return new Profile(new double[] {0, lengthM}, new double[] {0, riseM});
    }

    public int cells() {
        return distancesM.length - 1;
    }

    public double lengthM() {
        return distancesM[cells()];
    }

    public double fromM(int cell) {
        return distancesM[cell];
    }

    public double cellM(int cell) {
        return distancesM[cell + 1] - distancesM[cell];
    }

    /// Rise over run in a cell.
    public double grade(int cell) {
        double rise = heightsM[cell + 1] - heightsM[cell];
        double along = cellM(cell);
        return rise / StrictMath.sqrt(along * along - rise * rise);
    }

    /// The sum of all rises, in metres.
    public double ascentM() {
        double sum = 0;
        for (int i = 1; i < heightsM.length; i++) {
            sum += Math.max(0, heightsM[i] - heightsM[i - 1]);
        }
        return sum;
    }

    public double riseM() {
        return heightsM[cells()] - heightsM[0];
    }
}
