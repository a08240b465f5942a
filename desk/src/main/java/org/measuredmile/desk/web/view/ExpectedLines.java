package org.measuredmile.desk.web.view;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.measuredmile.archive.Archive;
import org.measuredmile.comparison.expected.Expectation;
import org.measuredmile.comparison.expected.ExpectedLine;
import org.measuredmile.comparison.expected.Fitting;
import org.measuredmile.comparison.expected.JudgedBike;
import org.measuredmile.comparison.expected.Lines;
import org.measuredmile.desk.CsvText;
import org.measuredmile.desk.ExpectedWords;
import org.measuredmile.desk.TestedBikes;
import org.measuredmile.publication.chart.LinePlot;
import org.measuredmile.trial.Trials;

/// Makes the page of an expected-value line and its table as delimited text.
public final class ExpectedLines {
    private static final double WIDE = 760;
    private static final double NARROW = 352;
    private static final int STRETCHES = 40;

    private final Printing printing;
    private final ExpectedLine line;
    private final Expectation expectation;

    public ExpectedLines(Archive archive, Printing printing, ExpectedLine line) {
        this.printing = printing;
        this.line = line;
        this.expectation = Fitting.of(line, TestedBikes.all(archive));
    }

    public static String path(ExpectedLine line) {
        return "/standings/lines/" + line.id();
    }

    public LineView view() {
        return switch (expectation) {
            case Expectation.Fitted fitted -> fitted(fitted);
            case Expectation.NoLine none -> page("", "", "", "", none.why(), List.of(), List.of());
        };
    }

    private LineView fitted(Expectation.Fitted fitted) {
        var plot = plot(fitted);
        String sentence = sentence(fitted);
        return page(
                plot.svg(WIDE, sentence),
                plot.svg(NARROW, sentence),
                Printing.capital(ExpectedWords.slope(fitted, printing.printer())) + ".",
                Printing.capital(ExpectedWords.band(fitted)) + ".",
                "",
                fitted.bikes().reversed().stream().map(this::row).toList(),
                FindingView.of(fitted.findings()));
    }

    private LineView page(
            String wide,
            String narrow,
            String slope,
            String band,
            String none,
            List<LineView.Row> rows,
            List<FindingView> findings) {
        var trial = Trials.delivering(line.figure().id()).orElseThrow().declaration();
        return new LineView(
                line.title(),
                Printing.capital(line.figure().title()) + ", " + trial.words(expectation.variant()) + ", against "
                        + line.across().words() + ".",
                Printing.capital(line.why()) + ".",
                wide,
                narrow,
                slope,
                band,
                none,
                Printing.capital(line.across().words()),
                Printing.capital(line.figure().title()),
                rows,
                leftOut(),
                findings,
                Lines.ALL.stream()
                        .map(one -> new StandingsView.Choice(one.title(), path(one), one.equals(line)))
                        .toList(),
                path(line) + "/csv");
    }

    private LinePlot plot(Expectation.Fitted fitted) {
        double step = (fitted.high() - fitted.low()) / STRETCHES;
        var curve = IntStream.rangeClosed(0, STRETCHES)
                .mapToObj(i -> fitted.at(i == STRETCHES ? fitted.high() : fitted.low() + i * step))
                .flatMap(Optional::stream)
                .map(one -> new LinePlot.Stretch(one.across(), one.value(), one.band()))
                .toList();
        var dots = fitted.bikes().stream()
                .map(bike -> new LinePlot.Dot(
                        bike.across().value(),
                        bike.value(),
                        bike.interval95(),
                        bike.place() == JudgedBike.Place.INSIDE ? "" : bike.title()))
                .toList();
        var axes = new LinePlot.Axes(
                printing.scale(line.across().kind()),
                Printing.capital(line.across().words()),
                printing.scale(line.figure().kind()),
                Printing.capital(line.figure().title()));
        return new LinePlot(axes, curve, dots);
    }

    private static String sentence(Expectation.Fitted fitted) {
        String outside = fitted.outside().stream()
                .map(bike -> bike.title() + " " + ExpectedWords.place(bike))
                .collect(Collectors.joining("; "));
        return fitted.line().title() + ": " + fitted.bikes().size() + " bikes, "
                + (outside.isEmpty() ? "all inside the band" : outside);
    }

    private LineView.Row row(JudgedBike bike) {
        double half = bike.interval95().halfWidth();
        var kind = line.figure().kind();
        return new LineView.Row(
                bike.title(),
                Paths.bike(bike.bike()),
                ExpectedWords.across(bike.across(), line.across().kind(), printing.printer()),
                ValueView.of(printing.printer().figureInBoth(bike.value(), half, kind)),
                ValueView.of(printing.printer()
                        .figureInBoth(bike.expected(), bike.band().halfWidth(), kind)),
                ExpectedWords.place(bike),
                bike.place() != JudgedBike.Place.INSIDE);
    }

    private List<BikeView.Missing> leftOut() {
        Map<String, List<String>> byReason = expectation.leftOut().stream()
                .collect(Collectors.groupingBy(
                        Expectation.LeftOut::reason,
                        TreeMap::new,
                        Collectors.mapping(Expectation.LeftOut::title, Collectors.toList())));
        return byReason.entrySet().stream()
                .map(entry -> new BikeView.Missing(
                        Printing.capital(entry.getKey()),
                        Printing.count(entry.getValue().size(), "bike", "bikes"),
                        entry.getValue().stream().limit(12).collect(Collectors.joining(", "))))
                .toList();
    }

    /// The bikes as delimited text: a line a bike, SI units, every digit.
    public String csv() {
        var out = new CsvText()
                .line(
                        "bike",
                        "title",
                        "across",
                        "across-unit",
                        "across-standard-uncertainty",
                        "value",
                        "unit",
                        "interval-low",
                        "interval-high",
                        "expected",
                        "band-low",
                        "band-high",
                        "place",
                        "side");
        if (expectation instanceof Expectation.Fitted fitted) {
            fitted.bikes().forEach(bike -> line(out, bike));
        }
        return out.text();
    }

    private void line(CsvText out, JudgedBike bike) {
        out.line(
                bike.bike(),
                bike.title(),
                CsvText.number(bike.across().value()),
                line.across().kind().si().symbol(),
                CsvText.number(bike.across().standard()),
                CsvText.number(bike.value()),
                line.figure().kind().si().symbol(),
                CsvText.number(bike.interval95().low()),
                CsvText.number(bike.interval95().high()),
                CsvText.number(bike.expected()),
                CsvText.number(bike.band().low()),
                CsvText.number(bike.band().high()),
                bike.place().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                bike.isAbove() ? "above" : "below");
    }
}
