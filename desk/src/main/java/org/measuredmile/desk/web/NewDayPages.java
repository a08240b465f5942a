package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.measuredmile.archive.Act;
import org.measuredmile.archive.DayEntry;
import org.measuredmile.desk.web.edit.NewDay;
import org.measuredmile.desk.web.edit.Typed;
import org.measuredmile.desk.web.view.Kits;
import org.measuredmile.desk.web.view.NewDayView;
import org.measuredmile.desk.web.view.Paths;
import org.measuredmile.desk.web.view.Printing;
import org.measuredmile.desk.web.view.Reductions;
import org.measuredmile.desk.web.view.RunView;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.recording.day.DayWriter;
import org.measuredmile.recording.day.Instrument;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/// The form that begins a test day.
@Controller
class NewDayPages {
    private final Desk desk;
    private final Pages pages;
    private final Clock clock = Clock.systemUTC();

    NewDayPages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/days/new")
    ResponseEntity<String> form(HttpServletRequest request, @RequestParam(defaultValue = "") String bike) {
        ZoneId zone = desk.archive().days().stream()
                .findFirst()
                .flatMap(day -> Reductions.of(desk.archive(), day.id()))
                .map(reduced -> reduced.day().timeZone())
                .orElseGet(ZoneId::systemDefault);
        String kit =
                Kits.of(desk.archive()).stream().findFirst().map(Kits.Kit::day).orElse("");
        var typed = Typed.of(Map.of(
                "instrumentsOf",
                kit,
                "bike",
                bike,
                "who",
                pages.visitor(request).who(),
                "date",
                LocalDate.now(clock.withZone(zone)).toString(),
                "timeZone",
                zone.getId(),
                "surface",
                "dry"));
        return show(request, typed, HttpStatus.OK);
    }

    @PostMapping("/days/new")
    ResponseEntity<String> keep(HttpServletRequest request, @RequestParam Map<String, String> sent) {
        var typed = Typed.of(sent);
        var system = pages.visitor(request).system();
        var taken = desk.archive().days().stream().map(DayEntry::id).toList();
        return switch (new NewDay(typed, system).read(bikes(), taken, kits())) {
            case NewDay.Read.Refused(Typed refused) -> show(request, refused, HttpStatus.UNPROCESSABLE_CONTENT);
            case NewDay.Read.Kept(var day, var bike) -> {
                var folder = new DayFolder(day.id(), DayWriter.write(day, bike), new TreeMap<>());
                desk.archive().importDay(folder, new Act(typed.get("who"), "begun in the browser"));
                yield DayPages.remembering(typed.get("who"), Paths.day(day.id()));
            }
        };
    }

    private ResponseEntity<String> show(HttpServletRequest request, Typed typed, HttpStatus status) {
        var bikes = desk.archive().bikes().stream()
                .map(bike -> new RunView.Choice(bike.id(), bike.title()))
                .toList();
        var categories = desk.archive().bikes().stream()
                .map(bike -> bike.category())
                .filter(one -> !one.isEmpty())
                .distinct()
                .sorted()
                .toList();
        var known = new NewDayView.Known(bikes, categories, Kits.of(desk.archive()));
        var view = NewDayView.of(new Printing(pages.visitor(request).system()), known, typed);
        return pages.show(request, new Pages.Sheet("new-day", view, "New test day", Frame.Place.DAYS), status);
    }

    private Map<String, List<Instrument>> kits() {
        var kits = new TreeMap<String, List<Instrument>>();
        Kits.of(desk.archive()).forEach(kit -> kits.put(kit.day(), kit.instruments()));
        return kits;
    }

    private Map<String, Bike> bikes() {
        var known = new TreeMap<String, Bike>();
        for (var entry : desk.archive().bikes()) {
            entry.days().stream()
                    .findFirst()
                    .flatMap(day -> Reductions.of(desk.archive(), day))
                    .ifPresent(reduced -> known.put(entry.id(), reduced.bike()));
        }
        return known;
    }
}
