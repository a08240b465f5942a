package org.measuredmile.archive;

import java.time.LocalDate;
import java.util.List;
import org.measuredmile.trial.Correlation;
import org.measuredmile.trial.Figure;

/// A figure in the archive, with the bike and the day it belongs to.
///
/// Shape: `configuration` is the text by which configurations differ; `accepted` when every run it was made from was
/// confirmed by a person; `correlations` are the figure's with others of its day; `json` is all of it as `mile reduce
/// --json` gives it.
public record StoredFigure(
        String day,
        LocalDate date,
        String bike,
        String title,
        String category,
        String drive,
        String configuration,
        boolean accepted,
        Figure figure,
        List<Correlation> correlations,
        String json) {
    public StoredFigure {
        correlations = List.copyOf(correlations);
    }
}
