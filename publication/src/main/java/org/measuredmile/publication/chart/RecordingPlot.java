package org.measuredmile.publication.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import org.measuredmile.recording.Channel;

/// A whole recording, or a stretch of it, over clock time, with the runs found in it as two posts and a line above it.
///
/// Shape: one lane a trial; each run is labelled where it stands and leads to what can be done with it. The drawing
/// says which seconds lie at which pixels (`data-from`, `data-to`, `data-left`, `data-right`), so that handles can be
/// laid over it.
/// Unit: seconds of the recording; pixels of the page.
public final class RecordingPlot {
    private static final double LEFT = 40;
    /// A finger needs 44 px of height; the words stand in them too.
    private static final double LANE = 58;

    private static final double FINGER = 44;
    private static final double HEAD = 26;
    private static final double FOOT = 36;

    private final Source source;
    private final Look look;
    private final List<String> lanes;
    private final Axis time;
    private final Axis upright;

    /// What is drawn.
    ///
    /// Shape: `name` is the file's, `quantity` what the channel holds in words ("speed by wheel").
    public record Source(String name, String quantity, Channel channel, ClockTicks clock, List<Run> runs) {
        public Source {
            runs = List.copyOf(runs);
        }
    }

    /// How it is drawn: for which width and height of the curve, from when to when, on its own or on a page of
    /// ours.
    public record Look(Scale scale, double width, double height, double fromS, double toS, boolean alone) {
        /// Error: IllegalArgumentException for a stretch without length or a width without room.
        public Look {
            if (!(toS > fromS) || width < 200 || height < 20) {
                throw new IllegalArgumentException(
                        "a plot of " + width + " x " + height + " from " + fromS + " to " + toS + " s");
            }
        }
    }

    /// A run in the recording.
    ///
    /// Shape: `id` names it for links, `label` is short and stands at it, `lane` the trial it belongs to,
    /// `word` its state in a word, `css` `open` for one nobody decided on, `struck` for one that does not
    /// count, else empty.
    public record Run(
            String id, String label, String lane, String word, String css, double fromS, double toS, String href) {}

    public RecordingPlot(Source source, Look look) {
        this.source = source;
        this.look = look;
        this.lanes = source.runs().stream().map(Run::lane).distinct().toList();
        double right = look.width() - (look.scale().hasOther() ? 40 : 14);
        int most = (int) Math.max(3, (right - LEFT) / (source.clock().start().isPresent() ? 84 : 64));
        this.time =
                new Axis(look.fromS(), look.toS(), LEFT, right, source.clock().within(look.fromS(), look.toS(), most));
        double top = lanes.size() * LANE + HEAD;
        this.upright = upright(top, top + look.height());
    }

    /// The whole file's lowest and highest, so that a closer view keeps the same scale.
    private Axis upright(double top, double bottom) {
        double lowest = 0;
        double highest = 0;
        boolean any = false;
        for (double value : source.channel().values()) {
            double shown = look.scale().shown(value);
            lowest = any ? Math.min(lowest, shown) : shown;
            highest = any ? Math.max(highest, shown) : shown;
            any = true;
        }
        boolean restsAtZero = lowest >= -0.02 * highest && lowest < 0.4 * highest;
        double low = restsAtZero ? Math.min(0, lowest) : lowest;
        double high = Math.max(highest, low + 1e-6);
        int most = look.height() < 120 ? 4 : 8;
        double room = 0.04 * (high - low);
        return new Axis(
                low, high + room, bottom, top, Ticks.covering(low, high, most).within(low, high + room));
    }

    /// How high a drawing is that has so many lanes and a curve of a height.
    public static double heightOf(int lanes, double curveHeight) {
        return lanes * LANE + HEAD + curveHeight + FOOT;
    }

    public String svg() {
        double timeY = upright.fromPx() + 10;
        double height = heightOf(lanes.size(), look.height());
        var svg = new Svg("plot recording-plot", look.width(), height, sentence(), frame());
        if (look.alone()) {
            svg.style(AloneStyle.CSS);
        }
        source.runs().forEach(run -> ground(svg, run));
        axes(svg, timeY);
        var envelope = Envelope.of(source.channel(), look.scale(), time, upright);
        envelope.gaps().forEach(gap -> gap(svg, gap));
        envelope.lines().forEach(line -> svg.path("speed", line));
        for (Envelope.Sample sample : envelope.samples()) {
            svg.circle("sample", time.at(sample.timeS()), upright.at(sample.shown()), 2.4);
        }
        for (int i = 0; i < lanes.size(); i++) {
            lane(svg, lanes.get(i), i * LANE);
        }
        return svg.close();
    }

    private TreeMap<String, String> frame() {
        var frame = new TreeMap<String, String>();
        frame.put("xmlns", "http://www.w3.org/2000/svg");
        frame.put("data-from", seconds(look.fromS()));
        frame.put("data-to", seconds(look.toS()));
        frame.put("data-left", Svg.number(time.fromPx()));
        frame.put("data-right", Svg.number(time.toPx()));
        frame.put("data-top", Svg.number(upright.toPx()));
        frame.put("data-bottom", Svg.number(upright.fromPx()));
        // A picture holds no links; a drawing on a page does.
        frame.put("role", look.alone() ? "img" : "group");
        return frame;
    }

    private static String seconds(double timeS) {
        return String.format(Locale.ROOT, "%.3f", timeS);
    }

    private void axes(Svg svg, double timeY) {
        for (Ticks.Tick tick : upright.ticks()) {
            svg.path("guide", Svg.line(upright.at(tick.value()), time.fromPx(), time.toPx()));
            svg.text("right", LEFT - 8, upright.at(tick.value()) + 4, tick.label());
        }
        double wordsY = upright.toPx() - 10;
        svg.text("", 2, wordsY, (source.quantity() + ", " + look.scale().symbol()).replaceAll(", $", ""));
        if (look.scale().hasOther()) {
            Scale there = look.scale().other();
            Axis beside = upright.beside(
                    there.shown(look.scale().unit().toSi(upright.low())),
                    there.shown(look.scale().unit().toSi(upright.high())));
            for (Ticks.Tick tick : beside.ticks()) {
                if (look.height() >= 120 || beside.ticks().indexOf(tick) % 2 == 0) {
                    svg.text("", time.toPx() + 8, beside.at(tick.value()) + 4, tick.label());
                }
            }
            svg.text("right", look.width() - 2, wordsY, there.symbol());
        }
        svg.path("axis", time.lying(timeY, 4));
        double before = Double.NEGATIVE_INFINITY;
        for (Ticks.Tick tick : time.ticks()) {
            double x = Math.min(time.at(tick.value()), look.width() - Svg.widthOf(tick.label()) / 2);
            if (x - before > Svg.widthOf(tick.label()) + 6) {
                svg.text("mid", x, timeY + 19, tick.label());
                before = x;
            }
        }
    }

    private void gap(Svg svg, Envelope.Gap gap) {
        double from = Math.max(time.fromPx(), time.at(gap.fromS()));
        double to = Math.min(time.toPx(), time.at(gap.toS()));
        double y = upright.fromPx();
        if (to - from < 2) {
            return;
        }
        svg.path("gap", Svg.line(y, from, to));
        String words = "gap " + duration(gap.toS() - gap.fromS());
        if (to - from > Svg.widthOf(words)) {
            svg.text("mid", (from + to) / 2, y - 5, words);
        }
    }

    private static String duration(double seconds) {
        if (seconds >= 60) {
            return Math.round(seconds / 60) + "\u00a0min";
        }
        return String.format(Locale.ROOT, seconds >= 10 ? "%.0f" : "%.1f", seconds) + "\u00a0s";
    }

    private void lane(Svg svg, String lane, double top) {
        svg.text("", LEFT, top + 10, lane);
        double freeFrom = Double.NEGATIVE_INFINITY;
        for (Run run : source.runs()) {
            if (run.lane().equals(lane) && run.toS() >= look.fromS() && run.fromS() <= look.toS()) {
                freeFrom = run(svg, run, top, freeFrom);
            }
        }
    }

    /// A faint ground under the curve where a run lies.
    private void ground(Svg svg, Run run) {
        double from = Math.max(time.fromPx(), time.at(run.fromS()));
        double to = Math.min(time.toPx(), time.at(run.toS()));
        if (to > from) {
            svg.rect(
                    "run-ground",
                    new Svg.Box(from, upright.toPx(), Math.max(to - from, 1), upright.fromPx() - upright.toPx()));
        }
    }

    /// Draws one run, and says from where the next one's words may stand.
    private double run(Svg svg, Run run, double top, double freeFrom) {
        double from = Math.max(time.fromPx(), time.at(run.fromS()));
        double to = Math.min(time.toPx(), time.at(run.toS()));
        double middle = (from + to) / 2;
        double y = top + 38;
        begin(svg, run);
        svg.rect("hit", new Svg.Box(Math.min(from, middle - 12), top + 12, Math.max(to - from, 24), FINGER));
        var posts = new StringBuilder(Svg.line(y, from, to));
        if (run.fromS() >= look.fromS()) {
            posts.append(Svg.post(from, y - 6, y + 6));
        }
        if (run.toS() <= look.toS()) {
            posts.append(Svg.post(to, y - 6, y + 6));
        }
        svg.path("post", posts.toString());
        if (run.css().equals("struck")) {
            svg.path(
                    "post",
                    "M" + Svg.number(middle - 5) + " " + Svg.number(y + 6) + "L" + Svg.number(middle + 5) + " "
                            + Svg.number(y - 6));
        } else {
            svg.circle(run.css().equals("open") ? "ring" : "dot", middle, y, 3);
        }
        double free = name(svg, run, new Svg.Box(middle, top + 26, to - from, 0), freeFrom);
        svg.end(look.alone() ? "g" : "a");
        return free;
    }

    /// Its label at the run, with its state's word where there is room; where labels would meet, none.
    private double name(Svg svg, Run run, Svg.Box at, double freeFrom) {
        String words = run.label() + " " + run.word();
        for (String one : List.of(words, run.label())) {
            double half = Svg.widthOf(one) / 2;
            double x = Math.clamp(at.x(), time.fromPx() + Math.min(half, 20), time.toPx() - Math.min(half, 20));
            boolean roomy = one.equals(run.label()) || half * 2 < Math.max(at.width(), 90);
            if (roomy && x - half > freeFrom) {
                svg.text("name mid", x, at.y(), one);
                return x + half + 4;
            }
        }
        return freeFrom;
    }

    private void begin(Svg svg, Run run) {
        var attributes = new TreeMap<String, String>();
        attributes.put("class", ("run " + run.css()).strip());
        if (look.alone()) {
            svg.begin("g", attributes);
            return;
        }
        attributes.put("href", run.href());
        attributes.put("data-run", run.id());
        attributes.put("data-from", seconds(run.fromS()));
        attributes.put("data-to", seconds(run.toS()));
        attributes.put("aria-label", said(run));
        svg.begin("a", attributes);
    }

    private String said(Run run) {
        return run.lane() + ", " + run.label() + ", " + run.word() + ", "
                + source.clock().exact(run.fromS()) + " to " + source.clock().exact(run.toS());
    }

    private String sentence() {
        var words = new ArrayList<String>();
        words.add(source.quantity() + " of " + source.name() + " from "
                + source.clock().exact(look.fromS()) + " to " + source.clock().exact(look.toS()) + " ("
                + source.clock().words() + ")");
        for (String lane : lanes) {
            long count = source.runs().stream()
                    .filter(run -> run.lane().equals(lane))
                    .count();
            words.add(lane + ": " + count + (count == 1 ? " run" : " runs"));
        }
        if (source.runs().isEmpty()) {
            words.add("no run found");
        }
        return String.join("; ", words);
    }
}
