package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Map;
import org.measuredmile.archive.Act;
import org.measuredmile.desk.web.edit.ColumnsForm;
import org.measuredmile.desk.web.edit.Correction;
import org.measuredmile.desk.web.edit.Typed;
import org.measuredmile.desk.web.view.ColumnTables;
import org.measuredmile.desk.web.view.Formed;
import org.measuredmile.desk.web.view.Paths;
import org.measuredmile.desk.web.view.Reductions;
import org.measuredmile.trial.DayReduction;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/// What the columns of an instrument's tables mean: proposed, shown, set once.
@Controller
class ColumnPages {
    private final Desk desk;
    private final Pages pages;

    ColumnPages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/days/{day}/columns")
    ResponseEntity<String> columns(
            HttpServletRequest request, @PathVariable String day, @RequestParam Map<String, String> asked) {
        return show(request, Paths.name(day), Typed.of(asked));
    }

    private ResponseEntity<String> show(HttpServletRequest request, String day, Typed typed) {
        var view = new ColumnTables(desk.archive(), day, reduced(day)).view(typed.get("instrument"), typed);
        var status = typed.faults().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT;
        String title = "Columns of " + (view.instrument().isEmpty() ? "an instrument" : view.instrument());
        return pages.show(
                request, new Pages.Sheet("columns", new Formed<>(view, typed), title, Frame.Place.DAYS), status);
    }

    /// Sets what the columns mean: another revision of the day.
    @PostMapping("/days/{day}/columns")
    ResponseEntity<String> set(
            HttpServletRequest request, @PathVariable("day") String dayPiece, @RequestParam Map<String, String> sent) {
        String day = Paths.name(dayPiece);
        var reduced = reduced(day);
        var typed = Typed.of(sent);
        var tables = new ColumnTables(desk.archive(), day, reduced);
        var form = new ColumnsForm(reduced.day(), tables.meanings(typed.get("instrument")), typed);
        var changed = form.changed();
        if (changed.isEmpty()) {
            return show(request, day, typed.wrong(form.faults()));
        }
        String why = typed.get("why");
        var act = new Act(typed.get("who"), changed.get().what() + (why.isEmpty() ? "" : ": " + why));
        var stored = desk.archive().day(day).orElseThrow();
        desk.archive().revise(day, Correction.of(stored, reduced, changed.get().day()), act);
        return DayPages.remembering(typed.get("who"), Paths.columns(day, typed.get("instrument")));
    }

    private DayReduction.Result.Reduced reduced(String day) {
        return Reductions.of(desk.archive(), day)
                .orElseThrow(() ->
                        new NotThere("No test day “" + day + "” with usable files is here.", "/days", "To the days"));
    }
}
