package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.archive.Act;
import org.measuredmile.archive.DayEntry;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.spec.SpecSheet;
import org.measuredmile.desk.TestedBikes;
import org.measuredmile.desk.web.edit.SpecForm;
import org.measuredmile.desk.web.edit.Typed;
import org.measuredmile.desk.web.view.Formed;
import org.measuredmile.desk.web.view.Paths;
import org.measuredmile.desk.web.view.Printing;
import org.measuredmile.desk.web.view.Specs;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.DayEdit;
import org.measuredmile.recording.day.SpecLine;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/// A bike's spec sheet, and the form that writes a line of it into the bike's folder.
@Controller
class SpecPages {
    private final Desk desk;
    private final Pages pages;

    SpecPages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/bikes/{id}/spec")
    ResponseEntity<String> sheet(
            HttpServletRequest request,
            @PathVariable("id") String piece,
            @RequestParam(name = "line", defaultValue = "") String line,
            @RequestParam(name = "item", defaultValue = "") String item) {
        TestedBike bike = bike(Paths.name(piece));
        Optional<SpecLine> chosen = line(written(bike.bike().id()), line);
        return show(request, bike, chosen, chosen.map(SpecForm::typed).orElseGet(() -> Typed.of(Map.of("item", item))));
    }

    /// The bike as its folder describes it, without its marks.
    private Bike written(String id) {
        return desk.archive().describe(id).orElseThrow();
    }

    /// The line of a number in the sheet's own order of writing; none where there is no such line.
    private static Optional<SpecLine> line(Bike bike, String number) {
        return number.matches("\\d{1,4}")
                ? bike.spec().stream().skip(Integer.parseInt(number)).findFirst()
                : Optional.empty();
    }

    private ResponseEntity<String> show(
            HttpServletRequest request, TestedBike bike, Optional<SpecLine> chosen, Typed typed) {
        var printing = new Printing(pages.visitor(request).system());
        DayEntry latest = latest(bike.bike().id());
        var source = new Specs.Source(
                latest.id(), latest.date(), written(bike.bike().id()).spec().size());
        var view = new Specs(printing, SpecSheet.of(bike), source, chosen).view();
        var status = typed.faults().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT;
        var sheet =
                new Pages.Sheet("spec", new Formed<>(view, typed), view.title() + ", spec sheet", Frame.Place.FLEET);
        return pages.show(request, sheet, status);
    }

    /// Keeps a line as a revision of the test day that describes the bike.
    @PostMapping("/bikes/{id}/spec")
    ResponseEntity<String> keep(
            HttpServletRequest request, @PathVariable("id") String piece, @RequestParam Map<String, String> sent) {
        String id = Paths.name(piece);
        TestedBike marked = bike(id);
        Bike written = written(id);
        return switch (SpecForm.read(Typed.of(sent), written)) {
            case SpecForm.Read.Refused(Typed typed) -> {
                var chosen = Optional.of(typed)
                        .filter(one -> one.values().containsKey("was.item"))
                        .flatMap(one -> written.spec().stream()
                                .filter(line -> line.item().equals(one.get("was.item")))
                                .findFirst());
                yield show(request, marked, chosen, typed);
            }
            case SpecForm.Read.Kept(Optional<SpecLine> was, SpecLine now) -> {
                var day = latest(id).id();
                var stored = desk.archive().day(day).orElseThrow();
                String who = sent.getOrDefault("who", "").strip();
                String why = "spec line " + now.item() + (was.isPresent() ? " changed: " : " added: ")
                        + sent.getOrDefault("why", "").strip();
                desk.archive().revise(day, DayEdit.withSpecLine(stored.folder(), id, was, now), new Act(who, why));
                yield DayPages.remembering(who, Paths.spec(id) + "#" + now.item());
            }
        };
    }

    private TestedBike bike(String id) {
        return TestedBikes.of(desk.archive(), id)
                .orElseThrow(() -> new NotThere("No bike “" + id + "” is in this archive.", "/", "To the fleet"));
    }

    /// The latest day of a bike: its folder describes it.
    private DayEntry latest(String bike) {
        return desk.archive().days().stream()
                .filter(day -> day.bike().equals(bike) && day.state() == DayEntry.State.REDUCED)
                .findFirst()
                .orElseThrow(() -> new NotThere("No test day of this bike can be used.", "/days", "To the days"));
    }
}
