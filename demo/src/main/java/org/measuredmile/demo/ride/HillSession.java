package org.measuredmile.demo.ride;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/// Climbs one after the other on one road: a run-up, the hill, a little beyond, a rest, slowly down again.
///
/// Unit: seconds, metres; the first gate lies `RUN_UP_M` along the road.
public final class HillSession {
    /// How far before the first gate each ride begins.
    public static final double RUN_UP_M = 60;

    private static final double BEYOND_M = 40;
    private static final double DOWN_MPS = 7;
    private static final double RESTS_S = 12;
    private static final double STEP_S = RiddenClimb.STEP_S;

    private final List<double[]> pieces = new ArrayList<>();
    private final List<Double> setOffs = new ArrayList<>();
    private int size;

    /// All climbs as one ride; distances rise and fall with the road.
    public static HillSession of(List<RiddenClimb> climbs) {
        var session = new HillSession();
        for (var climb : climbs) {
            session.add(climb);
        }
        return session;
    }

    private void add(RiddenClimb climb) {
        setOffs.add(size * STEP_S);
        double entry = climb.speedMps()[0];
        double exit = climb.speedMps()[climb.speedMps().length - 1];
        even(0, 0, 0, RESTS_S);
        even(0, RUN_UP_M, entry, RUN_UP_M / entry);
        double[] distance = climb.distanceM();
        for (int i = 1; i < distance.length; i++) {
            push(RUN_UP_M + distance[i], climb.speedMps()[i]);
        }
        double top = RUN_UP_M + distance[distance.length - 1];
        even(top, top + BEYOND_M, exit, BEYOND_M / exit);
        even(top + BEYOND_M, top + BEYOND_M, 0, RESTS_S);
        even(top + BEYOND_M, 0, DOWN_MPS, (top + BEYOND_M) / DOWN_MPS);
    }

    private void even(double fromM, double toM, double mps, double seconds) {
        int steps = (int) Math.round(seconds / STEP_S);
        for (int i = 1; i <= steps; i++) {
            push(fromM + (toM - fromM) * i / steps, mps);
        }
    }

    private void push(double alongM, double mps) {
        int piece = size >> 14;
        if (piece == pieces.size()) {
            pieces.add(new double[2 << 14]);
        }
        int at = (size & ((1 << 14) - 1)) * 2;
        pieces.get(piece)[at] = alongM;
        pieces.get(piece)[at + 1] = mps;
        size++;
    }

    /// When each ride set off, in seconds of the whole.
    public List<Double> setOffs() {
        return List.copyOf(setOffs);
    }

    public TrueRide ride() {
        double[] speed = new double[size];
        double[] distance = new double[size];
        for (int i = 0; i < size; i++) {
            distance[i] = pieces.get(i >> 14)[(i & ((1 << 14) - 1)) * 2];
            speed[i] = pieces.get(i >> 14)[(i & ((1 << 14) - 1)) * 2 + 1];
        }
        return new TrueRide(STEP_S, speed, distance);
    }

    /// What a receiver says of it, whose speed is off by a factor, on a road of given heights above its beginning.
    public static List<ReceiverModel.Epoch> shown(
            List<ReceiverModel.Epoch> seen, double scale, TrueRide ride, DoubleUnaryOperator heightM) {
        return seen.stream()
                .map(epoch -> new ReceiverModel.Epoch(
                        epoch.timeS(),
                        epoch.hasFix(),
                        epoch.spot(),
                        epoch.speedMps() * scale,
                        epoch.altitudeM() + heightM.applyAsDouble(ride.distanceAtM(epoch.timeS()) - RUN_UP_M),
                        epoch.courseDegrees()))
                .toList();
    }
}
