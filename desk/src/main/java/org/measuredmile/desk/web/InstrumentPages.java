package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.archive.Act;
import org.measuredmile.desk.web.edit.Correction;
import org.measuredmile.desk.web.edit.DayInstruments;
import org.measuredmile.desk.web.edit.Typed;
import org.measuredmile.desk.web.view.Formed;
import org.measuredmile.desk.web.view.InstrumentsView;
import org.measuredmile.desk.web.view.Paths;
import org.measuredmile.desk.web.view.Printing;
import org.measuredmile.desk.web.view.Reductions;
import org.measuredmile.trial.DayReduction;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/// What a day was measured with: its instruments, and which of them made which recording.
@Controller
class InstrumentPages {
    private final Desk desk;
    private final Pages pages;

    InstrumentPages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/days/{day}/instruments")
    ResponseEntity<String> instruments(HttpServletRequest request, @PathVariable String day) {
        return show(request, Paths.name(day), Typed.NOTHING);
    }

    private ResponseEntity<String> show(HttpServletRequest request, String day, Typed typed) {
        var printing = new Printing(pages.visitor(request).system());
        var view = InstrumentsView.of(printing, day, reduced(day));
        var status = typed.faults().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT;
        return pages.show(
                request,
                new Pages.Sheet("instruments", new Formed<>(view, typed), view.title(), Frame.Place.DAYS),
                status);
    }

    /// Adds an instrument: another revision of the day.
    @PostMapping("/days/{day}/instruments")
    ResponseEntity<String> add(
            HttpServletRequest request, @PathVariable String day, @RequestParam Map<String, String> sent) {
        String id = Paths.name(day);
        var reduced = reduced(id);
        var form = new DayInstruments(reduced.day(), Typed.of(sent));
        return kept(request, id, form, form.added(pages.visitor(request).system()));
    }

    /// Says which instrument made which recording: another revision of the day.
    @PostMapping("/days/{day}/instruments/made")
    ResponseEntity<String> give(
            HttpServletRequest request, @PathVariable String day, @RequestParam Map<String, String> sent) {
        String id = Paths.name(day);
        var reduced = reduced(id);
        var form = new DayInstruments(reduced.day(), Typed.of(sent));
        return kept(request, id, form, form.given(InstrumentsView.files(reduced)));
    }

    private ResponseEntity<String> kept(
            HttpServletRequest request, String day, DayInstruments form, Optional<DayInstruments.Changed> changed) {
        Typed typed = form.faulty();
        if (changed.isEmpty()) {
            return show(request, day, typed);
        }
        String why = typed.get("why");
        var act = new Act(typed.get("who"), changed.get().what() + (why.isEmpty() ? "" : ": " + why));
        var stored = desk.archive().day(day).orElseThrow();
        desk.archive()
                .revise(day, Correction.of(stored, reduced(day), changed.get().day()), act);
        return DayPages.remembering(typed.get("who"), Paths.instruments(day));
    }

    private DayReduction.Result.Reduced reduced(String day) {
        return Reductions.of(desk.archive(), day)
                .orElseThrow(() ->
                        new NotThere("No test day “" + day + "” with usable files is here.", "/days", "To the days"));
    }
}
