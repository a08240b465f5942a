package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.motion.Journey.Leg;
import org.measuredmile.recording.motion.Journey.Sums;

/// Walks along a journey sample by sample and sums it up. See [Journey].
final class JourneyWalk {
    static final double MOVING_MPS = 0.5;
    private static final double GAP_S = 3;
    private static final double GAP_STEPS = 2.5;
    private static final double STOP_S = 3;
    /// A longer gap between two speeds may hold anything, s.
    private static final double BRIDGED_S = 60;
    /// Positions wander by so much while a bike stands, m.
    private static final double WANDER_M = 30;
    private static final double NEAR_S = 5;

    private final List<Finding> findings = new ArrayList<>();
    private double wayM;
    private double unrecordedM;
    private double ridingS;
    private double squares;
    private int stops;
    private double stoodS;
    private boolean hasMoved;
    private Leg before;
    private Leg leg;
    private boolean isNewLeg;
    private boolean hasSample;
    private double gapLimitS;
    private double timeS;
    private double valueMps;

    JourneyWalk(Leg first) {
        before = first;
        leg = first;
    }

    void begin(Leg next) {
        before = leg;
        leg = next;
        isNewLeg = true;
    }

    void take(double atS, double mps) {
        if (isNewLeg) {
            gapLimitS = Math.max(GAP_S, GAP_STEPS * leg.source().channel().medianStepS());
        }
        if (hasSample) {
            double stepS = atS - timeS;
            if (stepS > (isNewLeg ? GAP_S : gapLimitS)) {
                gap(isNewLeg ? before : leg, atS, mps);
            } else {
                step(stepS, mps);
            }
        }
        hasSample = true;
        isNewLeg = false;
        timeS = atS;
        valueMps = mps;
    }

    private void step(double stepS, double mps) {
        double meanMps = (valueMps + mps) / 2;
        if (meanMps > MOVING_MPS) {
            double metres = meanMps * stepS;
            wayM += metres;
            ridingS += stepS;
            squares += metres * (valueMps * valueMps + valueMps * mps + mps * mps) / 3;
            moves();
        } else {
            stoodS += stepS;
        }
    }

    private void moves() {
        if (hasMoved && stoodS >= STOP_S) {
            stops++;
        }
        hasMoved = true;
        stoodS = 0;
    }

    private void gap(Leg last, double atS, double mps) {
        double stepS = atS - timeS;
        boolean moved = valueMps > MOVING_MPS && mps > MOVING_MPS;
        var straight = straightM(last, atS);
        double metres = straight.isPresent()
                ? (straight.getAsDouble() > WANDER_M ? straight.getAsDouble() : 0)
                : moved && stepS <= BRIDGED_S ? stepS * (valueMps + mps) / 2 : 0;
        if (metres > 0) {
            unrecordedM += metres;
            ridingS += Math.min(stepS, metres / Math.max(1, (valueMps + mps) / 2));
            findings.add(Finding.note(
                    "way-not-recorded",
                    Place.atTime(last.recording().name(), timeS - last.shiftS()),
                    String.format(
                            Locale.ROOT,
                            "%.0f m in %.0f s were not recorded; %s stands in for them",
                            metres,
                            stepS,
                            straight.isPresent() ? "the straight line" : "the line between the two speeds")));
            moves();
        } else {
            stoodS += stepS;
            // A recorder that pauses by itself stops in the stand; the next recording may begin anywhere.
            boolean isOpen = moved || (isNewLeg && (valueMps > MOVING_MPS || mps > MOVING_MPS));
            if (isOpen && straight.isEmpty()) {
                findings.add(Finding.warning(
                        "gap-without-positions",
                        Place.atTime(last.recording().name(), timeS - last.shiftS()),
                        String.format(Locale.ROOT, "nothing tells how far the bike went in a gap of %.0f s", stepS),
                        "name every recording of the ride with its run, or write the distance down by hand"));
            }
        }
    }

    private OptionalDouble straightM(Leg last, double atS) {
        double[] from = position(last.recording().channel(ChannelKind.LATITUDE), last, timeS);
        double[] fromEast = position(last.recording().channel(ChannelKind.LONGITUDE), last, timeS);
        double[] to = position(leg.recording().channel(ChannelKind.LATITUDE), leg, atS);
        double[] toEast = position(leg.recording().channel(ChannelKind.LONGITUDE), leg, atS);
        if (from.length + fromEast.length + to.length + toEast.length < 4) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(
                Geodesic.WGS84.Inverse(from[0], fromEast[0], to[0], toEast[0], GeodesicMask.DISTANCE).s12);
    }

    /// The value of the sample nearest to a time of the journey; empty where none is near.
    private static double[] position(java.util.Optional<Channel> channel, Leg of, double atS) {
        if (channel.isEmpty()) {
            return new double[0];
        }
        double ownS = atS - of.shiftS();
        int next = channel.get().indexAtOrAfter(ownS);
        int best = next >= channel.get().size() ? next - 1 : next;
        if (best > 0
                && ownS - channel.get().timeS(best - 1) < Math.abs(channel.get().timeS(best) - ownS)) {
            best--;
        }
        boolean isNear = Math.abs(channel.get().timeS(best) - ownS) <= NEAR_S;
        return isNear ? new double[] {channel.get().value(best)} : new double[0];
    }

    Sums sums() {
        return new Sums(wayM, unrecordedM, ridingS, wayM > 0 ? squares / wayM : 0, stops);
    }

    List<Finding> findings() {
        return findings;
    }
}
