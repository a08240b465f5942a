package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.measuredmile.archive.Archive;
import org.measuredmile.comparison.sidebyside.Cell;
import org.measuredmile.comparison.sidebyside.Difference;
import org.measuredmile.comparison.sidebyside.FactRow;
import org.measuredmile.comparison.sidebyside.FigureRow;
import org.measuredmile.comparison.sidebyside.SideBySide;
import org.measuredmile.desk.ChosenBikes;
import org.measuredmile.publication.chart.SeriesMark;
import org.measuredmile.publication.chart.SharedStrip;
import org.measuredmile.quantity.Printed;
import org.measuredmile.trial.Chapter;

/// Makes the page of bikes side by side.
public final class SidesBySide {
    private static final int FEW_BIKES = 2;
    private static final double STRIP = 330;
    private static final double NARROW_STRIP = 280;

    private final Archive archive;
    private final Printing printing;

    public SidesBySide(Archive archive, Printing printing) {
        this.archive = archive;
        this.printing = printing;
    }

    /// The page for the bikes named; their fields are filled as far as they could be understood.
    public SideBySideView view(List<String> names) {
        var options = archive.bikes().stream()
                .map(one -> new SideBySideView.Option(one.id(), one.title()))
                .toList();
        var chosen = ChosenBikes.named(archive, names);
        var slots = new ArrayList<>(chosen.ids().stream().limit(SideBySide.MOST).toList());
        while (slots.size() < SideBySide.MOST) {
            slots.add("");
        }
        if (names.isEmpty() || !chosen.faults().isEmpty()) {
            return new SideBySideView(
                    "Side by side",
                    options,
                    slots,
                    names.isEmpty() ? List.of() : chosen.faults(),
                    List.of(),
                    List.of(),
                    List.of(),
                    false,
                    "");
        }
        var sides = chosen.sideBySide(archive);
        var bikeNames = SideBySide.names(sides.bikes());
        return new SideBySideView(
                title(bikeNames),
                options,
                slots,
                List.of(),
                heads(sides),
                sides.facts().stream().map(fact -> fact(fact, bikeNames)).toList(),
                parts(sides, bikeNames),
                bikeNames.size() > FEW_BIKES,
                csvHref(chosen.ids()));
    }

    private static String csvHref(List<String> ids) {
        var query = ids.stream().map(id -> "bike=" + Paths.query(id)).toList();
        return "/side-by-side/csv?" + String.join("&", query);
    }

    private static String title(List<String> names) {
        return names.size() == 2
                ? names.getFirst() + " and " + names.getLast()
                : String.join(", ", names.subList(0, names.size() - 1)) + " and " + names.getLast();
    }

    private static List<SideBySideView.Head> heads(SideBySide sides) {
        return IntStream.range(0, sides.bikes().size())
                .mapToObj(i -> {
                    var bike = sides.bikes().get(i).bike();
                    boolean isNamed = !bike.model().isEmpty();
                    return new SideBySideView.Head(
                            isNamed ? bike.maker() : "",
                            isNamed ? bike.model() : bike.title(),
                            Paths.bike(bike.id()),
                            new SeriesMark(i + 1).key());
                })
                .toList();
    }

    private static SideBySideView.Fact fact(FactRow fact, List<String> names) {
        return new SideBySideView.Fact(
                fact.title(),
                IntStream.range(0, names.size())
                        .mapToObj(i -> new SideBySideView.Stated(
                                names.get(i), fact.words().get(i)))
                        .toList());
    }

    private List<SideBySideView.Part> parts(SideBySide sides, List<String> names) {
        var parts = new ArrayList<SideBySideView.Part>();
        for (Chapter chapter : Chapter.values()) {
            var open = new ArrayList<SideBySideView.Row>();
            var more = new ArrayList<SideBySideView.Row>();
            sides.rows().stream()
                    .filter(row -> row.figure().chapter() == chapter)
                    .forEach(row -> (row.foldable() ? more : open).add(row(row, names)));
            if (!open.isEmpty() || !more.isEmpty()) {
                parts.add(new SideBySideView.Part(chapter.title(), "chapter-" + chapter.ordinal(), open, more));
            }
        }
        return parts;
    }

    private SideBySideView.Row row(FigureRow row, List<String> names) {
        var places = row.cells().stream()
                .map(cell -> cell instanceof Cell.Measured(var result)
                        ? Optional.of(new SharedStrip.Place(
                                result.figure().value(),
                                result.figure().anyDay().interval95()))
                        : Optional.<SharedStrip.Place>empty())
                .toList();
        var scale = printing.scale(row.figure().kind());
        return new SideBySideView.Row(
                Printing.capital(row.figure().title()),
                row.condition(),
                Paths.standing(row.figure().id(), row.variant()),
                IntStream.range(0, names.size())
                        .mapToObj(i -> cell(names.get(i), row, row.cells().get(i)))
                        .toList(),
                new SharedStrip(scale, row.figure().better(), places)
                        .svg(names.size() > FEW_BIKES ? NARROW_STRIP : STRIP),
                row.saying(),
                row.differences().stream().map(one -> told(row, one, names)).toList());
    }

    private SideBySideView.Cell cell(String bike, FigureRow row, Cell cell) {
        return switch (cell) {
            case Cell.Measured(var result) ->
                new SideBySideView.Cell(
                        bike,
                        Optional.of(printing.value(
                                result.figure().value(),
                                result.figure().anyDay(),
                                row.figure().kind())),
                        "",
                        "");
            case Cell.NotRidden(String reason) ->
                new SideBySideView.Cell(bike, Optional.empty(), "not ridden", Printing.capital(reason) + ".");
            case Cell.NotMeasured() -> new SideBySideView.Cell(bike, Optional.empty(), "not measured", "");
        };
    }

    private SideBySideView.Told told(FigureRow row, Difference one, List<String> names) {
        double halfWidth = one.interval95().halfWidth();
        var kind = row.figure().kind();
        return new SideBySideView.Told(
                names.get(one.one()) + " less " + names.get(one.other()),
                printing.printer().difference(one.value(), halfWidth, kind).text(),
                size(printing.printer().difference(Math.abs(one.value()), halfWidth, kind)),
                one.real());
    }

    /// A difference without its sign, where the words beside it say which way it is.
    private static String size(Printed difference) {
        return new Printed(difference.value().replace("+", ""), difference.plusMinus(), difference.unit()).text();
    }
}
