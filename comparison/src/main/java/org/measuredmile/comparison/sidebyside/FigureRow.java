package org.measuredmile.comparison.sidebyside;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.FigureSpec;

/// One figure in one variant, for every bike.
///
/// Shape: `cells` in the order of the bikes; `differences` of every two that are compared, in that order too.
/// `foldable` for what does not speak for its trial. `saying` is one sentence, the same in every system of units;
/// `notCompared` says why results stand beside each other without being compared, else it is empty.
public record FigureRow(
        Declaration trial,
        FigureSpec figure,
        Variant variant,
        boolean foldable,
        List<Cell> cells,
        List<Difference> differences,
        String notCompared,
        String saying) {
    public FigureRow {
        cells = List.copyOf(cells);
        differences = List.copyOf(differences);
    }

    /// The result of the bike at a place, where it has one.
    public Optional<Cell.Measured> measured(int bike) {
        return cells.get(bike) instanceof Cell.Measured one ? Optional.of(one) : Optional.empty();
    }

    /// The places of the bikes that have a result.
    public List<Integer> measuredBikes() {
        var places = new ArrayList<Integer>();
        for (int i = 0; i < cells.size(); i++) {
            if (measured(i).isPresent()) {
                places.add(i);
            }
        }
        return places;
    }

    /// The variant in words: `by throttle alone, the highest`.
    public String condition() {
        return trial.words(variant);
    }
}
