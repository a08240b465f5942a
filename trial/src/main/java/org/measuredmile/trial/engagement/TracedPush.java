package org.measuredmile.trial.engagement;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.Recording;
import org.measuredmile.trial.Candidate;

/// One push in a recording: cranks at rest, turning, at rest again, and what the acceleration says of the motor.
///
/// Unit: seconds of the recording; the cranks' begin and end are known within `crankSdS`.
record TracedPush(
        Recording recording,
        Channel cranks,
        Channel acceleration,
        Channel speed,
        double cranksBeginS,
        double cranksEndS,
        double crankSdS,
        Optional<ThrustChange> comes,
        Optional<ThrustChange> goes,
        String fault)
        implements Candidate {
    /// A measured quantity of a push with the uncertainty of its own.
    record Part(double value, double sd) {}

    @Override
    public double beginS() {
        return cranksBeginS;
    }

    @Override
    public double endS() {
        return goes.filter(ThrustChange.Found.class::isInstance)
                .map(one -> ((ThrustChange.Found) one).endS())
                .orElse(cranksEndS);
    }

    @Override
    public boolean qualifies() {
        return delay().isPresent() || overrunTime().isPresent();
    }

    /// Why nothing can be told; empty text when something can.
    String reason() {
        if (!fault.isEmpty()) {
            return fault;
        }
        var reasons = new ArrayList<String>();
        for (var one : List.of(comes, goes)) {
            if (one.isPresent() && one.get() instanceof ThrustChange.Refused(String why)) {
                reasons.add(why);
            }
        }
        return qualifies() ? "" : String.join("; ", reasons);
    }

    private static Optional<ThrustChange.Found> found(Optional<ThrustChange> change) {
        return change.filter(ThrustChange.Found.class::isInstance).map(ThrustChange.Found.class::cast);
    }

    Optional<Part> delay() {
        return found(comes)
                .map(one -> new Part(one.beginS() - cranksBeginS, StrictMath.hypot(one.beginSdS(), crankSdS)));
    }

    /// How far the cranks turned until the thrust came, in radians: the integral of their speed.
    Optional<Part> crankAngle() {
        return found(comes).map(one -> {
            double turns = integral(cranks, cranksBeginS, one.beginS());
            double perSecond = at(cranks, one.beginS());
            // A later begin of the cranks takes away from the slow first part only, a later thrust from the fast last.
            double sd = StrictMath.hypot(perSecond * one.beginSdS(), perSecond / 2 * crankSdS);
            return new Part(2 * Math.PI * turns, 2 * Math.PI * sd);
        });
    }

    Optional<Part> overrunTime() {
        return found(goes).map(one -> new Part(one.endS() - cranksEndS, StrictMath.hypot(one.endSdS(), crankSdS)));
    }

    Optional<Part> overrunDistance() {
        return overrunTime().map(time -> {
            double metres = integral(speed, cranksEndS, cranksEndS + time.value());
            return new Part(metres, time.sd() * at(speed, cranksEndS));
        });
    }

    private static double at(Channel channel, double timeS) {
        int next = channel.indexAtOrAfter(timeS);
        if (next == 0 || next >= channel.size()) {
            return channel.value(Math.min(next, channel.size() - 1));
        }
        double share = (timeS - channel.timeS(next - 1)) / (channel.timeS(next) - channel.timeS(next - 1));
        return (1 - share) * channel.value(next - 1) + share * channel.value(next);
    }

    /// By trapezoids between the samples, both ends on the line between theirs.
    private static double integral(Channel channel, double fromS, double toS) {
        double sum = 0;
        double lastS = fromS;
        double last = at(channel, fromS);
        for (int i = channel.indexAtOrAfter(fromS); i < channel.size() && channel.timeS(i) < toS; i++) {
            sum += (channel.timeS(i) - lastS) * (channel.value(i) + last) / 2;
            lastS = channel.timeS(i);
            last = channel.value(i);
        }
        return sum + (toS - lastS) * (at(channel, toS) + last) / 2;
    }
}
