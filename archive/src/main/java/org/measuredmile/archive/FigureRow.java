package org.measuredmile.archive;

import java.util.List;
import java.util.stream.Collectors;
import org.measuredmile.archive.json.FigureJson;
import org.measuredmile.archive.json.Json;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Figure;

/// A row of the table of figures: the figure's JSON and the columns it is found by.
record FigureRow(
        String day,
        String figure,
        String variant,
        String trial,
        int version,
        String kind,
        String bike,
        String configuration,
        String date,
        double value,
        double low,
        double high,
        boolean accepted,
        String json) {
    /// The rows of a reduced day.
    static List<FigureRow> of(String dayId, DayReduction.Result.Reduced reduced) {
        return reduced.figures().stream()
                .map(figure -> of(dayId, reduced, figure))
                .toList();
    }

    private static FigureRow of(String dayId, DayReduction.Result.Reduced reduced, Figure figure) {
        var day = reduced.day();
        return new FigureRow(
                dayId,
                figure.key().figure(),
                figure.key().variant().text(),
                figure.trial(),
                figure.version(),
                figure.kind().name(),
                day.bike(),
                text(day.configuration()),
                day.date().toString(),
                figure.value(),
                figure.anyDay().interval95().low(),
                figure.anyDay().interval95().high(),
                isAccepted(figure),
                Json.compact(FigureJson.write(FigureJson.Of.day(day), figure, reduced.correlations())));
    }

    /// Whether a figure may stand among others: nothing about it was refused and no run of it waits to be
    /// confirmed.
    private static boolean isAccepted(Figure figure) {
        return figure.findings().stream()
                .noneMatch(finding -> finding.level() == Finding.Level.REFUSED
                        || finding.code().equals("not-confirmed"));
    }

    /// What makes one configuration another: firmware, battery, tyres and accessories, not the day's tyre
    /// pressures.
    static String text(Configuration configuration) {
        var accessories = configuration.accessories().stream().sorted().collect(Collectors.joining(", "));
        return List.of(
                        named("firmware", configuration.firmware()),
                        named("battery", configuration.battery()),
                        named("tyres", configuration.tyres()),
                        named("accessories", accessories))
                .stream()
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining("; "));
    }

    private static String named(String name, String value) {
        return value.isBlank() ? "" : name + " " + value.strip();
    }
}
