package org.measuredmile.trial.coastdown;

import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.ChannelKind;

/// Which way a coast went whose direction nobody wrote down: the way of the first coast that is known, or of the first
/// that was asked for, is out.
final class CoastHeadings {
    /// A movement of this many degrees of latitude is some ten metres.
    private static final double LEAST_DEGREES = 1e-4;

    private Optional<double[]> out;

    CoastHeadings(List<CoastRun> written) {
        out = written.stream()
                .filter(run -> run.traced().isPresent() && !run.direction().isEmpty())
                .flatMap(run -> movement(run.traced().get()).stream()
                        .map(move -> run.direction().equals("out") ? move : new double[] {-move[0], -move[1]}))
                .findFirst();
    }

    /// `out`, `back`, or nothing where the recording has no positions.
    String directionOf(TracedCoast coast) {
        var move = movement(coast);
        if (move.isEmpty()) {
            return "";
        }
        if (out.isEmpty()) {
            out = move;
        }
        double along = out.get()[0] * move.get()[0] + out.get()[1] * move.get()[1];
        return along >= 0 ? "out" : "back";
    }

    /// From the first to the last position: degrees north, and degrees east shortened to those of north.
    private static Optional<double[]> movement(TracedCoast coast) {
        var latitude = coast.recording().channel(ChannelKind.LATITUDE);
        var longitude = coast.recording().channel(ChannelKind.LONGITUDE);
        if (latitude.isEmpty() || longitude.isEmpty()) {
            return Optional.empty();
        }
        var north = latitude.get().between(coast.beginS(), coast.endS());
        var east = longitude.get().between(coast.beginS(), coast.endS());
        if (north.size() < 2 || east.size() < 2) {
            return Optional.empty();
        }
        double shortened = StrictMath.cos(StrictMath.toRadians(north.value(0)));
        double up = north.value(north.size() - 1) - north.value(0);
        double right = (east.value(east.size() - 1) - east.value(0)) * shortened;
        return StrictMath.hypot(up, right) < LEAST_DEGREES ? Optional.empty() : Optional.of(new double[] {up, right});
    }
}
