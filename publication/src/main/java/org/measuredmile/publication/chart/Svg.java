package org.measuredmile.publication.chart;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.SortedMap;
import java.util.TreeMap;

/// Writes one `svg` element: absolute coordinates, one digit after the point, text escaped.
///
/// Unit: CSS pixels at the width the chart is shown at.
final class Svg {
    private final StringBuilder out = new StringBuilder(1024);

    /// @param label the sentence for those who do not see the drawing; empty when a table beside it says the same
    Svg(String cssClass, double width, double height, String label) {
        this(cssClass, width, height, label, new TreeMap<>());
    }

    /// @param more further attributes of the whole drawing; with a `role` of their own where it holds links
    Svg(String cssClass, double width, double height, String label, SortedMap<String, String> more) {
        out.append("<svg");
        more.forEach(this::attribute);
        if (!cssClass.isEmpty()) {
            attribute("class", cssClass);
        }
        attribute("viewBox", "0 0 " + number(width) + " " + number(height));
        attribute("width", number(width));
        attribute("height", number(height));
        if (label.isEmpty()) {
            attribute("aria-hidden", "true");
        } else {
            if (!more.containsKey("role")) {
                attribute("role", "img");
            }
            attribute("aria-label", label);
        }
        out.append('>');
    }

    Svg path(String cssClass, String d) {
        if (!d.isEmpty()) {
            out.append("<path");
            attribute("class", cssClass);
            attribute("d", d);
            out.append("/>");
        }
        return this;
    }

    Svg text(String cssClass, double x, double y, String words) {
        out.append("<text");
        if (!cssClass.isEmpty()) {
            attribute("class", cssClass);
        }
        attribute("x", number(x));
        attribute("y", number(y));
        out.append('>');
        escape(words);
        out.append("</text>");
        return this;
    }

    Svg circle(String cssClass, double x, double y, double radius) {
        out.append("<circle");
        attribute("class", cssClass);
        attribute("cx", number(x));
        attribute("cy", number(y));
        attribute("r", number(radius));
        out.append("/>");
        return this;
    }

    /// A sample's ring, with what it says for a reader of single samples.
    Svg sample(double x, double y, String says) {
        out.append("<circle");
        attribute("class", "sample");
        attribute("cx", number(x));
        attribute("cy", number(y));
        attribute("r", "2.6");
        attribute("data-says", says);
        out.append("/>");
        return this;
    }

    Svg rect(String cssClass, Box box) {
        out.append("<rect");
        attribute("class", cssClass);
        attribute("x", number(box.x()));
        attribute("y", number(box.y()));
        attribute("width", number(box.width()));
        attribute("height", number(box.height()));
        out.append("/>");
        return this;
    }

    /// Begins an element that holds others, as a group or a link.
    Svg begin(String element, SortedMap<String, String> attributes) {
        out.append('<').append(element);
        attributes.forEach(this::attribute);
        out.append('>');
        return this;
    }

    Svg end(String element) {
        out.append("</").append(element).append('>');
        return this;
    }

    /// The style that a drawing needs which stands on no page of ours.
    Svg style(String css) {
        out.append("<style>").append(css).append("</style>");
        return this;
    }

    /// A rectangle by its upper left corner.
    record Box(double x, double y, double width, double height) {}

    String close() {
        return out.append("</svg>").toString();
    }

    /// A post through `y`, as path data.
    static String post(double x, double fromY, double toY) {
        return "M" + number(x) + " " + number(fromY) + "V" + number(toY);
    }

    static String line(double y, double fromX, double toX) {
        return "M" + number(fromX) + " " + number(y) + "H" + number(toX);
    }

    static String number(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(1, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /// About how wide a text of the plot face is at 12 px.
    static double widthOf(String words) {
        return words.codePointCount(0, words.length()) * 6.0;
    }

    private void attribute(String name, String value) {
        out.append(' ').append(name).append("=\"");
        escape(value);
        out.append('"');
    }

    private void escape(String words) {
        for (int i = 0; i < words.length(); i++) {
            char c = words.charAt(i);
            switch (c) {
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '&' -> out.append("&amp;");
                case '"' -> out.append("&quot;");
                default -> out.append(c);
            }
        }
    }
}
