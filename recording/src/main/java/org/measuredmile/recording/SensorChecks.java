package org.measuredmile.recording;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.quantity.QuantityKind;

/// Asks every channel whether it measured all the time: values that are held while others move, a speed of zero while
/// the positions go on, a speed that changes faster than tyres can make it.
///
/// Limits are common practice, no source, except the grip of a tyre on a dry road, which stays near one g (Wong,
/// Theory of Ground Vehicles, chapter 1).
final class SensorChecks {
    private static final double MOVING_MPS = 0.5;
    private static final double SUSPICIOUS_S = 8;
    private static final int FEWEST_HELD = 5;
    private static final double DEAD_S = 10;
    private static final double PASSED_MPS = 3;
    private static final double GRIP_MPS2 = 12;
    private static final double STEP_MPS = 5;
    private static final double STEP_S = 2;

    /// How long a channel of a kind may keep one value, and in how many samples, before it was held.
    private record Patience(double longestS, int samples, boolean zeroIsRest) {}

    private static final Map<ChannelKind, Patience> PATIENCE = new EnumMap<>(Map.ofEntries(
            Map.entry(ChannelKind.ACCELERATION_X, new Patience(2, 50, false)),
            Map.entry(ChannelKind.ACCELERATION_Y, new Patience(2, 50, false)),
            Map.entry(ChannelKind.ACCELERATION_Z, new Patience(2, 50, false)),
            Map.entry(ChannelKind.TURN_RATE_X, new Patience(2, 50, true)),
            Map.entry(ChannelKind.TURN_RATE_Y, new Patience(2, 50, true)),
            Map.entry(ChannelKind.TURN_RATE_Z, new Patience(2, 50, true)),
            Map.entry(ChannelKind.FORCE, new Patience(5, 50, true)),
            Map.entry(ChannelKind.POWER, new Patience(20, 10, true)),
            Map.entry(ChannelKind.CURRENT, new Patience(30, 15, true)),
            Map.entry(ChannelKind.CADENCE, new Patience(120, 20, true)),
            Map.entry(ChannelKind.HEART_RATE, new Patience(300, 30, true))));

    private final Recording recording;
    private final Fixes fixes;

    private SensorChecks(Recording recording, Fixes fixes) {
        this.recording = recording;
        this.fixes = fixes;
    }

    static List<Finding> of(Recording recording, Fixes fixes) {
        SensorChecks checks = new SensorChecks(recording, fixes);
        List<Finding> findings = new ArrayList<>();
        for (Channel channel : recording.channels()) {
            if (channel.kind() == ChannelKind.SPEED || channel.kind() == ChannelKind.WHEEL_SPEED) {
                checks.stale(channel).ifPresent(findings::add);
                checks.dead(channel).ifPresent(findings::add);
                checks.steps(channel).ifPresent(findings::add);
            } else if (channel.kind().quantity() != QuantityKind.SPEED) {
                checks.frozen(channel).ifPresent(findings::add);
            }
        }
        return findings;
    }

    /// The longest stretch over which a channel keeps one value.
    private record Held(double fromS, double forS) {}

    private static Held longestHeld(Channel channel, int fewest, double above) {
        double longestS = 0;
        double longestFromS = 0;
        int from = 0;
        for (int i = 1; i < channel.size(); i++) {
            boolean same = channel.value(i) == channel.value(from) && Math.abs(channel.value(i)) > above;
            if (!same) {
                from = i;
            }
            double heldS = channel.timeS(i) - channel.timeS(from);
            if (i - from >= fewest && heldS > longestS) {
                longestS = heldS;
                longestFromS = channel.timeS(from);
            }
        }
        return new Held(longestFromS, longestS);
    }

    /// A speed that stays the same to its last digit for seconds while moving was not measured anew.
    private Optional<Finding> stale(Channel speed) {
        Held held = longestHeld(speed, FEWEST_HELD, MOVING_MPS);
        return held.forS < SUSPICIOUS_S
                ? Optional.empty()
                : Optional.of(Finding.warning(
                        "stale-speed",
                        Place.atTime(recording.name(), held.fromS),
                        String.format(
                                Locale.ROOT,
                                "\"%s\" keeps one value for up to %.0f s while moving: it was held, not measured",
                                speed.name(),
                                held.forS),
                        "leave such stretches out of any run"));
    }

    private Optional<Finding> frozen(Channel channel) {
        Patience patience = PATIENCE.get(channel.kind());
        if (patience == null) {
            return Optional.empty();
        }
        Held held = longestHeld(channel, patience.samples, patience.zeroIsRest ? 0 : -1);
        return held.forS < patience.longestS || !othersMove(channel, held)
                ? Optional.empty()
                : Optional.of(Finding.warning(
                        "frozen-sensor",
                        Place.atTime(recording.name(), held.fromS),
                        String.format(
                                Locale.ROOT,
                                "\"%s\" keeps one value for up to %.0f s while other channels move: it was held, "
                                        + "not measured",
                                channel.name(),
                                held.forS),
                        "leave such stretches out of anything that needs this channel"));
    }

    private boolean othersMove(Channel frozen, Held held) {
        return recording.channels().stream()
                .filter(channel -> channel != frozen && channel.kind() != ChannelKind.OTHER)
                .anyMatch(channel -> moves(channel, held));
    }

    private static boolean moves(Channel channel, Held held) {
        int from = channel.indexAtOrAfter(held.fromS);
        int changes = 0;
        int i = from + 1;
        while (i < channel.size() && channel.timeS(i) <= held.fromS + held.forS) {
            changes += channel.value(i) == channel.value(i - 1) ? 0 : 1;
            i++;
        }
        return changes >= FEWEST_HELD && 2 * changes >= i - from - 1;
    }

    /// A speed of exactly nothing while the positions travel: the sensor was off or lost its magnet.
    private Optional<Finding> dead(Channel speed) {
        if (fixes.size() < 2) {
            return Optional.empty();
        }
        int from = -1;
        for (int i = 0; i <= speed.size(); i++) {
            boolean zero = i < speed.size() && speed.value(i) == 0;
            if (zero && from < 0) {
                from = i;
            } else if (!zero && from >= 0) {
                double fromS = speed.timeS(from);
                double toS = speed.timeS(i - 1);
                double wayM = i - from < FEWEST_HELD ? 0 : moved(fromS, toS);
                if (toS - fromS >= DEAD_S && wayM > PASSED_MPS * (toS - fromS)) {
                    return Optional.of(dead(speed, fromS, toS, wayM));
                }
                from = -1;
            }
        }
        return Optional.empty();
    }

    private Finding dead(Channel speed, double fromS, double toS, double wayM) {
        return Finding.warning(
                "dead-speed",
                Place.atTime(recording.name(), fromS),
                String.format(
                        Locale.ROOT,
                        "\"%s\" is 0 for %.0f s while the positions travel %.0f m: the sensor was off",
                        speed.name(),
                        toS - fromS,
                        wayM),
                "look at sensor and magnet; leave the stretch out of any run");
    }

    /// How far the positions came from one time to another, as the crow flies.
    private double moved(double fromS, double toS) {
        int one = fixes.atOrAfter(fromS);
        int two = fixes.atOrAfter(toS);
        return two >= fixes.size() || one >= two ? 0 : fixes.nearlyM(one, two);
    }

    private Optional<Finding> steps(Channel speed) {
        int steps = 0;
        int first = -1;
        for (int i = 1; i < speed.size(); i++) {
            double stepS = speed.timeS(i) - speed.timeS(i - 1);
            double changeMps = Math.abs(speed.value(i) - speed.value(i - 1));
            if (stepS <= STEP_S && changeMps > STEP_MPS && changeMps > GRIP_MPS2 * stepS) {
                steps++;
                first = first < 0 ? i : first;
            }
        }
        return first < 0
                ? Optional.empty()
                : Optional.of(Finding.warning(
                        "speed-step",
                        Place.atTime(recording.name(), speed.timeS(first)),
                        String.format(
                                Locale.ROOT,
                                "\"%s\" changes faster than tyres grip at %s, "
                                        + "first from %.1f m/s to %.1f m/s in %.2f s",
                                speed.name(),
                                steps == 1 ? "one place" : steps + " places",
                                speed.value(first - 1),
                                speed.value(first),
                                speed.timeS(first) - speed.timeS(first - 1)),
                        "leave such places out of any stop or start"));
    }
}
