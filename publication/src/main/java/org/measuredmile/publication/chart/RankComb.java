package org.measuredmile.publication.chart;

import java.util.Arrays;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.Rounding;

/// The chance of each rank as a comb: a tooth a rank, with its number from 10 % on.
///
/// Shape: `chances` by rank, the first rank first, each from 0 to 1; `full` is the chance that fills a row.
public final class RankComb {
    private static final double FLOOR_Y = 33;
    private static final double TALLEST = 21;

    private final double[] chances;
    private final double full;
    private final double pitch;

    public RankComb(double[] chances, double full) {
        this.chances = Arrays.copyOf(chances, chances.length);
        this.full = full;
        this.pitch = Math.max(6, Math.min(18, 216.0 / Math.max(1, chances.length)));
    }

    /// The numbers of the ranks, for the head of the column.
    public String head() {
        var svg = new Svg("", width(), 26, "");
        int every = pitch >= 16 ? 1 : 5;
        for (int i = 0; i < chances.length; i++) {
            if (i == 0 || (i + 1) % every == 0) {
                svg.text("mid", (i + 0.5) * pitch, 22, Integer.toString(i + 1));
            }
        }
        return svg.close();
    }

    /// One row's comb, 38 high.
    public String row(boolean subject) {
        var svg = new Svg("", width(), 38, sentence());
        svg.path("guide", Svg.line(FLOOR_Y, 0, width()));
        for (int i = 0; i < chances.length; i++) {
            if (chances[i] < 0.005) {
                continue;
            }
            double height = Math.max(1, TALLEST * Math.min(1, chances[i] / full));
            svg.rect(
                    subject ? "subject-dot" : "bar",
                    new Svg.Box(i * pitch + pitch / 6, FLOOR_Y - height, pitch * 2 / 3, height));
            if (chances[i] >= 0.1 && pitch >= 16) {
                svg.text(
                        subject ? "mid own" : "mid",
                        (i + 0.5) * pitch,
                        FLOOR_Y - height - 2,
                        Rounding.toDecimals(100 * chances[i], 0).toPlainString());
            }
        }
        return svg.close();
    }

    private double width() {
        return Math.max(1, pitch * chances.length);
    }

    private String sentence() {
        return IntStream.range(0, chances.length)
                .filter(i -> chances[i] >= 0.005)
                .mapToObj(i -> "rank " + (i + 1) + " " + QuantityPrinter.chance(Math.min(1, chances[i])))
                .collect(Collectors.joining("; "));
    }
}
