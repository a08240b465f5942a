package org.measuredmile.trial;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.measuredmile.recording.day.FrameRate;

/// A time told by a camera's frames: `frames 1203 to 1266`, `63 frames`, or `frame 1203` counted from the clip's
/// first, which is 0; with the camera's rate behind them where no instrument states it: `frames 1203 to 1266 at
/// 30000/1001`.
///
/// What happens, happens somewhere in its frame, every moment as likely: each end that somebody looked up is uncertain
/// by half a frame either way. A difference of two ends is then triangular over a frame either way, and its standard
/// uncertainty is a frame over √6; that of one end is a frame over √12.
/// Source: JCGM 100:2008, 4.3.7 (uniform), 4.3.9 (the sum of two uniform distributions of the same width is
/// triangular).
public record FrameReading(long from, long to, int ends, Optional<FrameRate> rate) {
    private static final Pattern BETWEEN =
            Pattern.compile("(?:frames? +)?(\\d{1,9}) *(?:to|-|–|…) *(?:frame +)?(\\d{1,9})(?: *frames?)?");
    private static final Pattern COUNT = Pattern.compile("(\\d{1,9}) *frames?");
    private static final Pattern SINGLE = Pattern.compile("frame +(\\d{1,9})(?: *frames?)?");
    private static final Pattern RATE = Pattern.compile("(.+?) *(?: at |@) *(.+)");
    private static final Pattern MENTIONED = Pattern.compile("(?i)\\bframes?\\b|\\d+frames?\\b");

    /// Frames whose rate their camera has to say.
    public FrameReading(long from, long to, int ends) {
        this(from, to, ends, Optional.empty());
    }

    /// Whether a text means frames, rightly written or not.
    public static boolean isMeant(String written) {
        return MENTIONED.matcher(written).find();
    }

    /// The frames that a text names; nothing when it is written otherwise, states no rate where it should, or ends
    /// before it begins.
    public static Optional<FrameReading> parse(String written) {
        String plain = written.strip().toLowerCase(java.util.Locale.ROOT).replaceAll("\\s+", " ");
        Matcher withRate = RATE.matcher(plain);
        if (withRate.matches() && isMeant(withRate.group(1))) {
            Optional<FrameRate> rate = FrameRate.parse(withRate.group(2));
            return rate.flatMap(one -> frames(withRate.group(1))
                    .map(frames -> new FrameReading(frames.from, frames.to, frames.ends, Optional.of(one))));
        }
        return frames(plain);
    }

    private static Optional<FrameReading> frames(String plain) {
        if (!isMeant(plain)) {
            return Optional.empty();
        }
        Matcher between = BETWEEN.matcher(plain);
        if (between.matches()) {
            var both = new FrameReading(Long.parseLong(between.group(1)), Long.parseLong(between.group(2)), 2);
            return both.to < both.from ? Optional.empty() : Optional.of(both);
        }
        Matcher count = COUNT.matcher(plain);
        if (count.matches()) {
            return Optional.of(new FrameReading(0, Long.parseLong(count.group(1)), 2));
        }
        Matcher single = SINGLE.matcher(plain);
        return single.matches()
                ? Optional.of(new FrameReading(0, Long.parseLong(single.group(1)), 1))
                : Optional.empty();
    }

    /// The time, in seconds.
    public double seconds(FrameRate.Steady rate) {
        return rate.secondsOf(to - from);
    }

    /// The step whose √12th part is the reading's standard uncertainty, in seconds: a frame for one end, √2
    /// frames for the difference of two.
    public double stepS(FrameRate.Steady rate) {
        return rate.periodS() * Math.sqrt(ends);
    }
}
