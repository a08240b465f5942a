package org.measuredmile.archive;

import java.io.IOException;
import java.util.stream.Collectors;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.ScatterRecord;
import org.measuredmile.trial.Trials;

/// How the archive gets from a day's files to figures: the same way as `mile reduce`.
interface Reducer {
    /// With every trial's declared priors.
    Reducer DECLARED = folder -> DayReduction.reduce(folder, ScatterRecord.DECLARED_PRIORS);

    DayReduction.Result reduce(DayFolder folder) throws IOException;

    /// Trial versions and scatter record as text: figures of another method are out of date.
    static String method() {
        return Trials.ALL.stream()
                .map(trial ->
                        trial.declaration().id() + " " + trial.declaration().version())
                .collect(Collectors.joining(", ", "", "; " + ScatterRecord.DECLARED_PRIORS.name()));
    }
}
