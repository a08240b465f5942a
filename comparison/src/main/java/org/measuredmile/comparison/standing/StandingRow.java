package org.measuredmile.comparison.standing;

import java.util.List;

/// One bike's place in a standing.
///
/// Shape: `rank` counts as in a competition (1, 2, 2, 4), `joint` when others share it. `rankLow` to `rankHigh` holds
/// the
/// bike's rank in 95 of 100 draws from the results' uncertainties; `rankProbabilities` starts with that of rank 1.
/// `groups` are the numbers of the groups of neighbours it belongs to that can't be told apart; `toldApartFromNext`
/// says whether the order against the next row is supported, and is true in the last row. `percentile` is how much of
/// the population it is better than, by printed values.
public record StandingRow(
        Entrant entrant,
        int rank,
        boolean joint,
        int rankLow,
        int rankHigh,
        List<Double> rankProbabilities,
        List<Integer> groups,
        boolean toldApartFromNext,
        Percentile percentile) {
    public StandingRow {
        rankProbabilities = rankProbabilities instanceof RankChances kept ? kept : List.copyOf(rankProbabilities);
        groups = List.copyOf(groups);
    }

    /// The chance that this bike is the best of them.
    public double probabilityBest() {
        return rankProbabilities.getFirst();
    }

    /// The rank that comes up most often in the draws; of two as likely the better.
    public int mostLikelyRank() {
        int best = 0;
        for (int i = 1; i < rankProbabilities.size(); i++) {
            best = rankProbabilities.get(i) > rankProbabilities.get(best) ? i : best;
        }
        return best + 1;
    }

    /// The chance that it is among the best three.
    public double probabilityTopThree() {
        return Math.min(
                1,
                rankProbabilities.stream()
                        .limit(3)
                        .mapToDouble(Double::doubleValue)
                        .sum());
    }
}
