package org.measuredmile.trial;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/// The scatter of earlier days, as a named input: the same record gives the same figures, with or without an archive.
/// Renewing it is a change of method.
///
/// Shape: by figure id; a figure without an entry uses the prior that its trial declares.
public record ScatterRecord(String name, String date, SortedMap<String, Scatter> byFigure) {
    /// No earlier days: every trial's declared prior stands.
    public static final ScatterRecord DECLARED_PRIORS = new ScatterRecord("declared priors", "", new TreeMap<>());

    public ScatterRecord {
        byFigure = Collections.unmodifiableSortedMap(new TreeMap<>(byFigure));
    }

    public Scatter of(FigureSpec figure) {
        return byFigure.getOrDefault(figure.id(), figure.prior());
    }
}
