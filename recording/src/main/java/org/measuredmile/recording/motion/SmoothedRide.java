package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.measuredmile.recording.Channel;

/// A ride's speed, acceleration and way at any time, smoothed between its events and over none of them.
///
/// Where the bike brakes, stops or starts its acceleration jumps: a broken line is fitted there, and the smoother runs
/// from one such kink to the next,
/// each
/// piece on its own samples, and the way is carried on from piece to piece with its covariance. In a gap the state is
/// that of the process between its two ends, so that its uncertainty grows there.
/// Shape: `pieces` in order, disjoint, each of two samples or more. Times outside every piece have no state.
/// Unit: seconds of the recording, metres from the first piece's beginning, m/s, m/s²; standard uncertainties alike.
/// Source: Rauch, Tung and Striebel (1965), as [Smoother]; the jerk's density of 1 m²/s⁵ between events and the least
/// piece are house values.
public final class SmoothedRide {
    private static final double JERK_DENSITY = 1;
    private static final int FEWEST = 2;

    private final List<Piece> pieces;

    /// What lies between two events.
    private record Piece(List<Smoother.State> states, double beganM, double beganVariance) {
        double fromS() {
            return states.getFirst().timeS();
        }

        double toS() {
            return states.getLast().timeS();
        }
    }

    private SmoothedRide(List<Piece> pieces) {
        this.pieces = List.copyOf(pieces);
    }

    /// Smooths a speed between its own stops and starts.
    public static SmoothedRide of(SpeedSource source) {
        return of(source.channel(), source.sigmaMps(), eventsOf(source.channel()));
    }

    /// Smooths a speed between events that somebody knows, in any order.
    ///
    /// Error: IllegalArgumentException for a standard deviation that is not positive.
    public static SmoothedRide of(Channel speed, double sigmaMps, double[] eventsS) {
        if (!(sigmaMps > 0)) {
            throw new IllegalArgumentException("standard deviation " + sigmaMps + " m/s");
        }
        double[] events = eventsS.clone();
        Arrays.sort(events);
        var pieces = new ArrayList<Piece>();
        double wayM = 0;
        double variance = 0;
        double fromS = Double.NEGATIVE_INFINITY;
        double lastS = Double.NaN;
        double lastMps = 0;
        for (int i = 0; i <= events.length; i++) {
            double toS = i < events.length ? events[i] : Double.POSITIVE_INFINITY;
            var samples = speed.between(fromS, Math.nextDown(toS));
            if (samples.size() >= FEWEST) {
                var states = Smoother.between(samples, sigmaMps, JERK_DENSITY);
                var first = states.getFirst();
                if (!Double.isNaN(lastS)) {
                    // From the last state to the next piece's first the speed went straight.
                    double stepS = first.timeS() - lastS;
                    wayM += stepS * (lastMps + first.speedMps()) / 2;
                    variance += stepS * stepS * first.speedSd() * first.speedSd();
                }
                pieces.add(new Piece(states, wayM, variance));
                var last = states.getLast();
                wayM += last.distanceM();
                variance += last.distanceSd() * last.distanceSd();
                lastS = last.timeS();
                lastMps = last.speedMps();
                fromS = toS;
            }
            // Too few samples for a piece of their own stay with what follows.
        }
        return new SmoothedRide(pieces);
    }

    /// When the bike began to brake, came to rest and left it again: kinks fitted where a plain look found them.
    static double[] eventsOf(Channel speed) {
        var events = new TreeSet<Double>();
        for (var stop : Stops.find(speed)) {
            events.add(Kink.near(speed, stop.onsetS()));
            events.add(Kink.near(speed, stop.restS()));
            events.add(Kink.near(speed, Math.nextUp(stop.endS())));
        }
        return events.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /// How many pieces there are.
    public int pieces() {
        return pieces.size();
    }

    /// The state at a time; nothing outside the pieces.
    public Optional<Smoother.State> at(double timeS) {
        int low = 0;
        int high = pieces.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (pieces.get(middle).toS() < timeS) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low < pieces.size() && pieces.get(low).fromS() <= timeS
                ? Optional.of(within(pieces.get(low), timeS))
                : Optional.empty();
    }

    private static Smoother.State within(Piece piece, double timeS) {
        var states = piece.states();
        int low = 0;
        int high = states.size() - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (states.get(middle).timeS() < timeS) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        var next = states.get(low);
        if (low == 0 || next.timeS() == timeS) {
            return moved(next, piece, next.distanceM(), next.distanceSd());
        }
        return between(states.get(low - 1), next, piece, timeS);
    }

    /// The cubic whose speed and acceleration are those of both neighbours; between them the process adds
    /// q·a³·b³/(3·(a + b)³) to the speed's variance, a and b the times to either.
    private static Smoother.State between(Smoother.State one, Smoother.State other, Piece piece, double timeS) {
        double spanS = other.timeS() - one.timeS();
        double x = (timeS - one.timeS()) / spanS;
        double rest = 1 - x;
        double speed = one.speedMps() * rest * rest * (1 + 2 * x)
                + other.speedMps() * x * x * (3 - 2 * x)
                + spanS * x * rest * (one.accelerationMps2() * rest - other.accelerationMps2() * x);
        double acceleration = 6 * x * rest * (other.speedMps() - one.speedMps()) / spanS
                + one.accelerationMps2() * rest * (1 - 3 * x)
                + other.accelerationMps2() * x * (3 * x - 2);
        double bridged = JERK_DENSITY * StrictMath.pow(spanS * x * rest, 3) / 3;
        double speedVariance = rest * square(one.speedSd()) + x * square(other.speedSd()) + bridged;
        double way = one.distanceM()
                + spanS
                        * (one.speedMps() * (x - x * x * x + x * x * x * x / 2)
                                + other.speedMps() * (x * x * x - x * x * x * x / 2)
                                + spanS
                                        * (one.accelerationMps2() * (x * x / 2 - 2 * x * x * x / 3 + x * x * x * x / 4)
                                                - other.accelerationMps2() * (x * x * x / 3 - x * x * x * x / 4)));
        double sd = StrictMath.hypot(rest * one.distanceSd() + x * other.distanceSd(), spanS * Math.sqrt(bridged) / 2);
        var state = new Smoother.State(timeS, way, speed, acceleration, sd, Math.sqrt(speedVariance));
        return moved(state, piece, way, sd);
    }

    private static Smoother.State moved(Smoother.State state, Piece piece, double wayM, double sd) {
        return new Smoother.State(
                state.timeS(),
                piece.beganM() + wayM,
                state.speedMps(),
                state.accelerationMps2(),
                Math.sqrt(piece.beganVariance() + sd * sd),
                state.speedSd());
    }

    private static double square(double value) {
        return value * value;
    }
}
