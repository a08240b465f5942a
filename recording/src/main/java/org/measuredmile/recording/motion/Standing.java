package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;

/// When the bike stood: by its speed where there is one, else by fixes that go nowhere.
///
/// Shape: `spans` in order, disjoint, each at least [#LEAST_S] long; `by` says how it was decided.
/// Valid: by fixes, standing means that the line fitted through the fixes of ten seconds moves by less than 0.4 m/s; a
/// fix drifts by a few metres in a minute or two, which is slower.
public record Standing(List<Segment> spans, String by) {
    /// Shorter stands are none, s.
    static final double LEAST_S = 3;

    private static final double STANDS_BELOW_MPS = 0.5;
    private static final double DRIFTS_BELOW_MPS = 0.4;
    private static final double HALF_WINDOW_S = 5;
    /// A window that only just touches riding does not stand; so much of a stand's ends is given back, s.
    private static final double ENDS_S = 4;
    private static final int FEWEST_FIXES = 4;

    public Standing {
        spans = List.copyOf(spans);
    }

    public static Standing of(Recording recording) {
        var wheel = recording.channel(ChannelKind.WHEEL_SPEED);
        var receiver = recording.channel(ChannelKind.SPEED);
        var speed = wheel.or(() -> receiver);
        if (speed.isPresent()) {
            var channel = speed.get();
            return new Standing(
                    spans(channel.timesS(), below(channel), 0), wheel.isPresent() ? "wheel speed" : "receiver speed");
        }
        return Fixes.of(recording)
                .map(fixes -> new Standing(spans(fixes.timesS(), drifting(fixes), ENDS_S), "fixes that go nowhere"))
                .orElse(new Standing(List.of(), "nothing: neither speed nor positions"));
    }

    private static boolean[] below(Channel speed) {
        boolean[] stands = new boolean[speed.size()];
        for (int i = 0; i < stands.length; i++) {
            stands[i] = speed.value(i) < STANDS_BELOW_MPS;
        }
        return stands;
    }

    private static boolean[] drifting(Fixes fixes) {
        boolean[] stands = new boolean[fixes.size()];
        int from = 0;
        int to = 0;
        for (int i = 0; i < stands.length; i++) {
            double at = fixes.timesS()[i];
            while (fixes.timesS()[from] < at - HALF_WINDOW_S) {
                from++;
            }
            while (to < fixes.size() && fixes.timesS()[to] <= at + HALF_WINDOW_S) {
                to++;
            }
            stands[i] = to - from >= FEWEST_FIXES && fixes.driftMps(from, to) < DRIFTS_BELOW_MPS;
        }
        return stands;
    }

    private static List<Segment> spans(double[] timesS, boolean[] stands, double endsS) {
        var spans = new ArrayList<Segment>();
        int from = -1;
        for (int i = 0; i <= stands.length; i++) {
            boolean here = i < stands.length && stands[i];
            if (here && from < 0) {
                from = i;
            } else if (!here && from >= 0) {
                double fromS = Math.max(
                        timesS[from] - endsS,
                        spans.isEmpty() ? timesS[0] : spans.getLast().toS());
                double toS = Math.min(timesS[i - 1] + endsS, timesS[timesS.length - 1]);
                if (toS - fromS >= LEAST_S + 2 * endsS) {
                    spans.add(new Segment(fromS, toS));
                }
                from = -1;
            }
        }
        return spans;
    }

    /// Whether the bike stood at a time.
    public boolean at(double timeS) {
        return spanAt(timeS).isPresent();
    }

    private Optional<Segment> spanAt(double timeS) {
        int low = 0;
        int high = spans.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (spans.get(middle).fromS() <= timeS) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low > 0 && spans.get(low - 1).toS() >= timeS ? Optional.of(spans.get(low - 1)) : Optional.empty();
    }

    /// How long it stood in all, s.
    public double seconds() {
        return spans.stream().mapToDouble(span -> span.toS() - span.fromS()).sum();
    }
}
