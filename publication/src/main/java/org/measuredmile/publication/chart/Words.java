package org.measuredmile.publication.chart;

import java.util.ArrayList;
import java.util.List;

/// Breaks a label into at most two lines that fit a width; what is too long ends in an ellipsis.
final class Words {
    private Words() {}

    static List<String> wrap(String label, double width) {
        if (Svg.widthOf(label) <= width) {
            return List.of(label);
        }
        var lines = new ArrayList<String>();
        var line = new StringBuilder();
        for (String word : label.split(" ")) {
            boolean fits = line.isEmpty() || Svg.widthOf(line + " " + word) <= width;
            if (!fits && lines.isEmpty()) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines.stream().map(one -> cut(one, width)).toList();
    }

    private static String cut(String line, double width) {
        int most = (int) Math.max(2, width / 6.0);
        return line.length() <= most ? line : line.substring(0, most - 1).strip() + "…";
    }
}
