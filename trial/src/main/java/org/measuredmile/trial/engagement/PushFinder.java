package org.measuredmile.trial.engagement;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.trial.CandidateFinder;

/// Finds pushes: the cranks stand, turn, and stand again, in a recording that holds them and forward acceleration.
final class PushFinder implements CandidateFinder<TracedPush> {
    static final String REMEDY = "use a logger of cranks (5 Hz or more) and forward acceleration (20 Hz or more), or"
            + " count frames of a fast video";

    @Override
    public String word() {
        return "push";
    }

    @Override
    public Optional<Finding> tooCoarse(Place place, SpeedSource source) {
        return Optional.empty();
    }

    @Override
    public String withoutSpeed() {
        return "write the frames of a fast video down, or use a logger that writes speed too";
    }

    @Override
    public List<TracedPush> find(Recording recording, SpeedSource source) {
        var cranks = recording.channel(ChannelKind.CADENCE);
        var acceleration = recording.channel(ChannelKind.ACCELERATION_X);
        if (cranks.isEmpty() || acceleration.isEmpty() || cranks.get().size() < 3) {
            return List.of();
        }
        return pushes(recording, source.channel(), cranks.get(), acceleration.get());
    }

    private List<TracedPush> pushes(Recording recording, Channel speed, Channel cranks, Channel acceleration) {
        var found = new ArrayList<TracedPush>();
        double stillSinceS = cranks.timeS(0);
        int begin = -1;
        for (int i = 1; i < cranks.size(); i++) {
            boolean turns = cranks.value(i) > EngagementRules.STILL_HZ;
            boolean turned = cranks.value(i - 1) > EngagementRules.STILL_HZ;
            if (turns && !turned) {
                boolean stood = cranks.timeS(i - 1) - stillSinceS >= EngagementRules.STOOD_S;
                begin = stood ? i : -1;
            } else if (!turns && turned) {
                stillSinceS = cranks.timeS(i);
                if (begin > 0 && cranks.timeS(i - 1) - cranks.timeS(begin) >= EngagementRules.TURNED_S) {
                    found.add(push(recording, speed, cranks, acceleration, begin, i));
                }
                begin = -1;
            }
        }
        return found;
    }

    private static TracedPush push(
            Recording recording, Channel speed, Channel cranks, Channel acceleration, int begin, int end) {
        double beganS = (cranks.timeS(begin) + cranks.timeS(begin - 1)) / 2;
        double endedS = (cranks.timeS(end) + cranks.timeS(end - 1)) / 2;
        double sdS = (cranks.timeS(begin) - cranks.timeS(begin - 1)) / Math.sqrt(12);
        String fault = coarse(cranks, EngagementRules.LEAST_CRANK_HZ)
                .or(() -> coarse(acceleration, EngagementRules.LEAST_ACCELERATION_HZ))
                .orElse("");
        if (!fault.isEmpty()) {
            return new TracedPush(
                    recording,
                    cranks,
                    acceleration,
                    speed,
                    beganS,
                    endedS,
                    sdS,
                    Optional.empty(),
                    Optional.empty(),
                    fault);
        }
        return new TracedPush(
                recording,
                cranks,
                acceleration,
                speed,
                beganS,
                endedS,
                sdS,
                Optional.of(ThrustChange.find(acceleration, beganS, endedS, true)),
                Optional.of(ThrustChange.find(acceleration, endedS, nextTurn(cranks, end), false)),
                "");
    }

    private static double nextTurn(Channel cranks, int from) {
        for (int i = from; i < cranks.size(); i++) {
            if (cranks.value(i) > EngagementRules.STILL_HZ) {
                return cranks.timeS(i - 1);
            }
        }
        return cranks.timeS(cranks.size() - 1);
    }

    private static Optional<String> coarse(Channel channel, double leastHz) {
        double stepS = channel.medianStepS();
        return stepS <= EngagementRules.RATE_SLACK / leastHz
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ROOT,
                        "%s every %.2f s, at most %.2f s allowed; %s",
                        channel.kind().id(),
                        stepS,
                        1 / leastHz,
                        REMEDY));
    }
}
