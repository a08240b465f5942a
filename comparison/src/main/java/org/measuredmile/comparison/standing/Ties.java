package org.measuredmile.comparison.standing;

import java.math.BigDecimal;
import java.util.List;

/// Ranks as in a competition (1, 2, 2, 4) of values in their order, best first; values that print alike are one value.
///
/// Shape: `first` and `after` are, for each place from 0, where the values that print like its own begin and end.
record Ties(int[] first, int[] after) {
    static Ties of(List<BigDecimal> printed) {
        int n = printed.size();
        int[] first = new int[n];
        int[] after = new int[n];
        for (int from = 0; from < n; ) {
            int to = from + 1;
            while (to < n && printed.get(to).compareTo(printed.get(from)) == 0) {
                to++;
            }
            for (int place = from; place < to; place++) {
                first[place] = from;
                after[place] = to;
            }
            from = to;
        }
        return new Ties(first, after);
    }

    /// One more than how many are better.
    int rank(int place) {
        return first[place] + 1;
    }

    /// How many have this place's value, itself among them.
    int same(int place) {
        return after[place] - first[place];
    }

    Percentile percentile(int place) {
        return new Percentile(first.length - after[place], same(place), first.length);
    }
}
