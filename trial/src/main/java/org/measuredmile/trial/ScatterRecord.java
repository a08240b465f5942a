package org.measuredmile.trial;

import java.nio.charset.StandardCharsets;
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

    /// The record as text with every number in full, for its hash.
    public byte[] text() {
        var text = new StringBuilder(name).append('\n').append(date).append('\n');
        byFigure.forEach((figure, scatter) ->
                text.append(figure).append(' ').append(scatter).append('\n'));
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    public Scatter of(FigureSpec figure) {
        return byFigure.getOrDefault(figure.id(), figure.prior());
    }
}
