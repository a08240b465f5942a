package org.measuredmile.archive;

import java.time.LocalDate;
import org.measuredmile.trial.Figure;

/// A figure in the archive, with the bike and the day it belongs to.
///
/// Shape: `configuration` is the text by which configurations differ; `accepted` when every run it was made from was
/// confirmed by a person; `json` is the figure as `mile reduce --json` gives it.
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
        String json) {}
