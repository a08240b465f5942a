package org.measuredmile.desk.web.view;

import java.util.List;
import java.util.stream.IntStream;
import org.measuredmile.desk.web.edit.NewDay;
import org.measuredmile.desk.web.edit.Typed;
import org.measuredmile.quantity.QuantityKind;

/// The form of a new test day, with what was typed.
public record NewDayView(
        List<RunView.Choice> bikes,
        List<String> categories,
        List<Part> parts,
        List<RunView.Choice> kits,
        List<Integer> rows,
        Typed typed) {
    /// A group of fields under one head.
    public record Part(String title, String remark, List<Field> fields) {}

    /// One field: its name, label, unit of a bare number, and an example.
    public record Field(String name, String title, String unit, String example, String kind) {}

    /// What there is to choose from: bikes, their kinds, and the instruments of other days.
    public record Known(List<RunView.Choice> bikes, List<String> categories, List<Kits.Kit> kits) {}

    public static NewDayView of(Printing printing, Known known, Typed typed) {
        return new NewDayView(
                known.bikes(),
                known.categories(),
                parts(printing),
                known.kits().stream().map(Kits.Kit::choice).toList(),
                IntStream.rangeClosed(1, NewDay.INSTRUMENT_ROWS).boxed().toList(),
                typed);
    }

    private static List<Part> parts(Printing printing) {
        return List.of(
                new Part(
                        "When and where",
                        "",
                        List.of(
                                new Field("date", "Date", "", "2031-06-30", "date"),
                                new Field("place", "Place", "", "the road or the lane", "text"),
                                new Field("timeZone", "Time zone", "", "Europe/London", "text"))),
                new Part(
                        "Crew",
                        "Codes, never names.",
                        List.of(
                                new Field("crew", "Crew", "", "T1 tester, M1 mechanic", "text"),
                                new Field("rider", "Rider", "", "R1", "text"),
                                quantity(printing, "mass", "Rider with clothing and gear", QuantityKind.MASS))),
                new Part(
                        "As set up",
                        "What was not read stays empty.",
                        List.of(
                                quantity(printing, "tyrePressureFront", "Tyre pressure, front", QuantityKind.PRESSURE),
                                quantity(printing, "tyrePressureRear", "Tyre pressure, rear", QuantityKind.PRESSURE),
                                new Field("firmware", "Firmware", "", "1.8.2", "text"),
                                new Field("battery", "Battery", "", "on its label", "text"),
                                quantity(printing, "stateOfCharge", "Charge on the display", QuantityKind.RATIO))),
                new Part(
                        "Conditions",
                        "A condition that is missing widens an interval, so write what you can.",
                        List.of(
                                quantity(printing, "airTemperature", "Air temperature", QuantityKind.TEMPERATURE),
                                quantity(printing, "pressure", "Air pressure", QuantityKind.PRESSURE),
                                quantity(printing, "relativeHumidity", "Humidity", QuantityKind.RATIO),
                                quantity(printing, "windSpeed", "Wind speed", QuantityKind.SPEED),
                                new Field("windFrom", "Wind from", "", "north-west", "text"),
                                new Field("surface", "Surface", "", "dry", "text"))));
    }

    private static Field quantity(Printing printing, String name, String title, QuantityKind kind) {
        return new Field(
                name, title, NewDay.bareUnit(name, kind, printing.system()).symbol(), "", "text");
    }
}
