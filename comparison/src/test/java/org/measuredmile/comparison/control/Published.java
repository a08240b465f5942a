package org.measuredmile.comparison.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.measuredmile.comparison.control.MixedModel.Factor;

/// Published data sets, each a line a group.
final class Published {
    /// Yield of dyestuff from six batches of an intermediate: Davies and Goldsmith, Statistical Methods in
    /// Research and Production (1972), table 6.1.
    static final String DYESTUFF = """
            1545 1440 1440 1520 1580
            1540 1555 1490 1560 1495
            1595 1550 1605 1510 1560
            1445 1440 1595 1465 1545
            1595 1630 1515 1635 1625
            1520 1455 1450 1480 1445
            """;

    /// Invented by Box and Tiao, Bayesian Inference in Statistical Analysis (1973), table 5.1.4, so that
    /// batches differ by less than their runs let expect.
    static final String DYESTUFF_2 = """
            7.298 3.846 2.434 9.566 7.99
            5.22 6.556 0.608 11.788 -0.892
            0.11 10.386 13.434 5.51 8.166
            2.212 4.852 7.092 9.288 4.98
            0.282 9.014 4.458 9.446 7.198
            1.722 4.782 8.106 0.758 3.758
            """;

    /// Penicillin: 24 plates, a line each, with six samples on every plate: Davies and Goldsmith (1972),
    /// table 6.6.
    static final String PENICILLIN = """
            27 23 26 23 23 21
            27 23 26 23 23 21
            25 21 25 24 24 20
            26 23 25 23 23 20
            25 22 26 22 23 20
            24 22 25 23 22 19
            24 20 23 21 22 19
            26 22 26 24 24 21
            24 21 24 22 22 20
            24 21 24 23 22 19
            26 23 26 24 24 21
            25 22 26 24 24 20
            26 24 26 24 25 22
            26 23 26 23 23 20
            26 23 25 24 24 22
            25 22 25 23 23 20
            25 21 24 23 23 20
            25 22 24 23 23 19
            24 21 23 21 21 19
            26 23 26 24 24 21
            25 21 24 22 22 18
            25 22 25 22 22 20
            24 21 24 22 24 19
            24 21 24 22 21 18
            """;

    /// Hemmerle and Hartley, Technometrics 15 (1973) 819–831, as the documentation of SAS VARCOMP prints
    /// it: level of a, level of b, values.
    static final String HEMMERLE_HARTLEY = """
            1 1 237 254 246
            1 2 178 179
            2 1 208 178 187
            2 2 146 145 141
            3 1 186 183
            3 2 142 125 136
            """;

    /// NIST Statistical Reference Datasets, analysis of variance, lower difficulty (public domain).
    static final String SI_RSTV = """
            196.3052 196.124 196.189 196.2569 196.3403
            196.3042 196.3825 196.1669 196.3257 196.0422
            196.1303 196.2005 196.2889 196.0343 196.1811
            196.2795 196.1748 196.1494 196.1485 195.9885
            196.2119 196.1051 196.185 196.0052 196.209
            """;

    /// NIST Statistical Reference Datasets, analysis of variance, average difficulty (public domain).
    static final String ATM_WT_AG = """
            107.8681568 107.8681465 107.8681572 107.8681785 107.8681446 107.8681903 107.8681526 107.8681494 \
            107.8681616 107.8681587 107.8681519 107.8681486 107.8681419 107.8681569 107.8681508 107.8681672 \
            107.8681385 107.8681518 107.8681662 107.8681424 107.868136 107.8681333 107.868161 107.8681477
            107.8681079 107.8681344 107.8681513 107.8681197 107.8681604 107.8681385 107.8681642 107.8681365 \
            107.8681151 107.8681082 107.8681517 107.8681448 107.8681198 107.8681482 107.8681334 107.8681609 \
            107.8681101 107.8681512 107.8681469 107.868136 107.8681254 107.8681261 107.868145 107.8681368
            """;

    private Published() {}

    static double[][] groups(String text) {
        return text.lines()
                .map(line -> Arrays.stream(line.strip().split(" +"))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toArray(double[][]::new);
    }

    /// Values in groups that differ at random about one mean.
    static MixedModel oneWay(double[][] groups) {
        List<Integer> keys = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        for (int group = 0; group < groups.length; group++) {
            for (double value : groups[group]) {
                keys.add(group);
                values.add(value);
            }
        }
        double[] y = values.stream().mapToDouble(Double::doubleValue).toArray();
        return MixedModel.of(y, Factor.common(y.length), Factor.of("group", keys));
    }
}
