package org.measuredmile.comparison.control;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/// Values, each with a level of one fixed factor and of some random ones: y = fixed + random … + run.
///
/// Shape: levels are numbered from 0 in the order in which they first occur. Without a fixed factor every
/// value has level 0 of it, whose effect is then the mean.
/// Unit: that of the values, which are kept less the first of them (`origin`), so that what is common to
/// all costs no digits.
record MixedModel(double origin, double[] y, Factor fixed, List<Factor> random) {
    /// A factor: which level each value has.
    record Factor(String name, int[] levels, int count) {
        static Factor of(String name, List<?> keys) {
            Map<Object, Integer> numbers = new HashMap<>();
            int[] levels = new int[keys.size()];
            for (int i = 0; i < levels.length; i++) {
                Integer known = numbers.putIfAbsent(keys.get(i), numbers.size());
                levels[i] = known == null ? numbers.size() - 1 : known;
            }
            return new Factor(name, levels, numbers.size());
        }

        /// The factor that all values share.
        static Factor common(int n) {
            return new Factor("mean", new int[n], 1);
        }
    }

    static MixedModel of(double[] values, Factor fixed, Factor... random) {
        double[] y = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            y[i] = values[i] - values[0];
        }
        return new MixedModel(values[0], y, fixed, List.copyOf(List.of(random)));
    }

    int n() {
        return y.length;
    }

    /// Random factors first, then the fixed one.
    List<Factor> all() {
        var all = new ArrayList<>(random);
        all.add(fixed);
        return all;
    }
}
