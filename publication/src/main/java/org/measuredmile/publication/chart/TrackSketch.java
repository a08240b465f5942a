package org.measuredmile.publication.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.Track;

/// Where a recording went, as a sketch without a map: metres east and north on one scale, north up, with a scale bar;
/// a post marks the start, a ring the end.
///
/// Shape: simplified to about 500 points; a break of the recording stays a break. It shows the whole way: it is for the
/// crew, not for publishing.
/// Source: local metres by the radii of curvature of the WGS-84 ellipsoid at the middle latitude; within 20 km the
/// sketch is true to far less than its line's width.
public final class TrackSketch {
    private static final int MOST_POINTS = 500;
    private static final double MARGIN = 14;
    private static final double HEAD = 18;
    private static final double FOOT = 30;

    private final List<LocalWay.Line> lines;
    private final double width;
    private final double height;
    private final UnitSystem system;
    private final double pixelsPerMetre;
    private final LocalWay.Extent extent;

    private TrackSketch(LocalWay way, UnitSystem system, double width, double height) {
        this.system = system;
        this.width = width;
        this.height = height;
        this.extent = way.extent();
        double wide = Math.max(extent.wideM(), 1);
        double high = Math.max(extent.highM(), 1);
        this.pixelsPerMetre = Math.min((width - 2 * MARGIN) / wide, (height - HEAD - MARGIN - FOOT) / high);
        this.lines = way.simplified(0.4 / pixelsPerMetre, MOST_POINTS);
    }

    /// The sketch of a track; none where fewer than two positions were recorded.
    public static Optional<TrackSketch> of(Track track, UnitSystem system, double width, double height) {
        if (track.size() < 2) {
            return Optional.empty();
        }
        return Optional.of(new TrackSketch(LocalWay.of(track), system, width, height));
    }

    /// How many points are drawn.
    public int points() {
        return lines.stream().mapToInt(line -> line.eastM().length).sum();
    }

    /// The drawing.
    ///
    /// @param name the file
    public String svg(String name) {
        var frame = new TreeMap<String, String>();
        frame.put("xmlns", "http://www.w3.org/2000/svg");
        var svg = new Svg("plot track-sketch", width, height, sentence(name), frame);
        svg.style(AloneStyle.CSS);
        for (LocalWay.Line line : lines) {
            svg.path("way", path(line));
        }
        var last = lines.getLast();
        int end = last.eastM().length - 1;
        svg.circle("way-end", x(last.eastM()[end]), y(last.northM()[end]), 4);
        start(svg);
        bar(svg);
        svg.path(
                "axis",
                "M" + Svg.number(width - 12) + " " + Svg.number(height - 6) + "V" + Svg.number(height - 24) + "L"
                        + Svg.number(width - 15) + " " + Svg.number(height - 18));
        svg.text("right", width - 20, height - 10, "north");
        return svg.close();
    }

    private void start(Svg svg) {
        double x = x(lines.getFirst().eastM()[0]);
        double y = y(lines.getFirst().northM()[0]);
        svg.path("way-post", Svg.post(x, y - 12, y + 3));
        String side = x < 20 ? "said" : x > width - 20 ? "said right" : "said mid";
        svg.text(side, x < 20 ? x - 6 : x > width - 20 ? x + 6 : x, Math.max(10, y - 16), "start");
    }

    private void bar(Svg svg) {
        var length = barLength();
        double from = MARGIN;
        double to = from + length.toSi(1) * pixelsPerMetre;
        double y = height - 14;
        svg.path("axis", Svg.line(y, from, to) + Svg.post(from, y - 4, y + 4) + Svg.post(to, y - 4, y + 4));
        svg.text("", to + 6, y + 4, length.words());
    }

    /// A round length that takes up to about a third of the width, in the crew's own unit.
    private BarLength barLength() {
        double mostM = (width - 2 * MARGIN) / 3 / pixelsPerMetre;
        Unit large = system == UnitSystem.IMPERIAL ? Unit.MILE : Unit.KILOMETRE;
        Unit small = system == UnitSystem.IMPERIAL ? Unit.FOOT : Unit.METRE;
        Unit unit = mostM >= large.toSi(system == UnitSystem.IMPERIAL ? 0.25 : 1) ? large : small;
        double most = unit.fromSi(mostM);
        double power = 1;
        while (power * 10 <= most) {
            power *= 10;
        }
        while (power > most) {
            power /= 10;
        }
        double round = most >= 5 * power ? 5 * power : most >= 2 * power ? 2 * power : power;
        return new BarLength(unit, round);
    }

    private record BarLength(Unit unit, double length) {
        double toSi(double times) {
            return unit.toSi(length * times);
        }

        String words() {
            int decimals = length >= 1 ? 0 : length >= 0.1 ? 1 : 2;
            return QuantityPrinter.in(unit, unit.toSi(length), decimals).text();
        }
    }

    private String path(LocalWay.Line line) {
        var path = new StringBuilder();
        for (int i = 0; i < line.eastM().length; i++) {
            path.append(i == 0 ? 'M' : 'L')
                    .append(Svg.number(x(line.eastM()[i])))
                    .append(' ')
                    .append(Svg.number(y(line.northM()[i])));
        }
        // A stretch of one position is a dot, by its round ends.
        return line.eastM().length == 1 ? path + "h0.1" : path.toString();
    }

    private double x(double eastM) {
        double middle = (extent.westM() + extent.eastM()) / 2;
        return width / 2 + (eastM - middle) * pixelsPerMetre;
    }

    private double y(double northM) {
        double middle = (extent.southM() + extent.northM()) / 2;
        return (HEAD + height - FOOT - MARGIN) / 2 - (northM - middle) * pixelsPerMetre;
    }

    private String sentence(String name) {
        var printer = QuantityPrinter.desk(system);
        var words = new ArrayList<String>();
        words.add("Track of " + name + ", north up");
        words.add(length(printer, extent.wideM()) + " from west to east");
        words.add(length(printer, extent.highM()) + " from south to north");
        if (lines.size() > 1) {
            words.add("in " + lines.size() + " parts");
        }
        return String.join(", ", words);
    }

    private String length(QuantityPrinter printer, double metres) {
        return printer.value(metres, org.measuredmile.quantity.QuantityKind.LENGTH, 0)
                .text();
    }
}
