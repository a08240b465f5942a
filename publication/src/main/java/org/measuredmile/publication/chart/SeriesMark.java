package org.measuredmile.publication.chart;

/// The marks of up to six series, told apart by shape as well as by colour: disc, square, triangle up, diamond,
/// triangle down, cross.
///
/// Shape: `number` counts from 1; the class of a group that holds the marks is `s1` to `s6`.
public record SeriesMark(int number) {
    public static final int MOST = 6;

    public SeriesMark {
        if (number < 1 || number > MOST) {
            throw new IllegalArgumentException("series " + number + ", from 1 to " + MOST + " there are");
        }
    }

    String cssClass() {
        return "s" + number;
    }

    /// The mark around a point, as path data, about as heavy whatever its shape.
    String at(double x, double y, double radius) {
        double r = radius;
        return switch (number) {
            case 1 -> disc(x, y, r);
            case 2 -> closed(x, y, -0.9 * r, -0.9 * r, 0.9 * r, -0.9 * r, 0.9 * r, 0.9 * r, -0.9 * r, 0.9 * r);
            case 3 -> closed(x, y, 0, -1.2 * r, 1.2 * r, 0.9 * r, -1.2 * r, 0.9 * r);
            case 4 -> closed(x, y, 0, -1.3 * r, 1.3 * r, 0, 0, 1.3 * r, -1.3 * r, 0);
            case 5 -> closed(x, y, 0, 1.2 * r, 1.2 * r, -0.9 * r, -1.2 * r, -0.9 * r);
            default -> cross(x, y, r);
        };
    }

    private static String disc(double x, double y, double r) {
        String half = "a" + Svg.number(r) + " " + Svg.number(r) + " 0 1 0 ";
        return "M" + Svg.number(x - r) + " " + Svg.number(y) + half + Svg.number(2 * r) + " 0" + half
                + Svg.number(-2 * r) + " 0Z";
    }

    private static String cross(double x, double y, double r) {
        double arm = 1.1 * r;
        double thin = 0.4 * r;
        return closed(
                x, y, -thin, -arm, thin, -arm, thin, -thin, arm, -thin, arm, thin, thin, thin, thin, arm, -thin, arm,
                -thin, thin, -arm, thin, -arm, -thin, -thin, -thin);
    }

    private static String closed(double x, double y, double... offsets) {
        var path = new StringBuilder();
        for (int i = 0; i < offsets.length; i += 2) {
            path.append(i == 0 ? "M" : "L")
                    .append(Svg.number(x + offsets[i]))
                    .append(' ')
                    .append(Svg.number(y + offsets[i + 1]));
        }
        return path.append('Z').toString();
    }

    /// The mark alone, for the head of a column.
    public String key() {
        var svg = new Svg("series-key " + cssClass(), 16, 16, "");
        svg.path("series-mark", at(8, 8, 5));
        return svg.close();
    }
}
