package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.HashMap;
import java.util.Map;
import org.measuredmile.archive.Act;
import org.measuredmile.desk.web.edit.Correction;
import org.measuredmile.desk.web.edit.RunForm;
import org.measuredmile.desk.web.edit.Typed;
import org.measuredmile.desk.web.edit.WindowForm;
import org.measuredmile.desk.web.edit.Windows;
import org.measuredmile.desk.web.view.FileDrawing;
import org.measuredmile.desk.web.view.FilePage;
import org.measuredmile.desk.web.view.Formed;
import org.measuredmile.desk.web.view.Paths;
import org.measuredmile.desk.web.view.Printing;
import org.measuredmile.desk.web.view.Reductions;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Trial;
import org.measuredmile.trial.Trials;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/// A file of a test day: what it is, and the plot on which its runs are decided.
@Controller
class FilePages {
    private final Desk desk;
    private final Pages pages;

    FilePages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/days/{day}/files/{file}")
    ResponseEntity<String> file(
            HttpServletRequest request,
            @PathVariable String day,
            @PathVariable String file,
            @RequestParam(defaultValue = "") String run,
            @RequestParam(defaultValue = "0") double from,
            @RequestParam(defaultValue = "0") double to,
            @RequestParam(defaultValue = "0") long kept) {
        var asked = new FilePage.Asked(Paths.name(file), run, from, to, kept);
        return show(request, Paths.name(day), asked, Typed.NOTHING);
    }

    /// The page with one of its runs chosen, and with faults beside that run's fields.
    static FilePage.Asked chosen(String file, String run) {
        return new FilePage.Asked(file, run, 0, 0, 0);
    }

    ResponseEntity<String> show(HttpServletRequest request, String day, FilePage.Asked asked, Typed typed) {
        var reduced = reduced(day);
        boolean isThere = desk.archive()
                .day(day)
                .filter(stored -> stored.revision().files().containsKey("recordings/" + asked.file()))
                .isPresent();
        if (!isThere) {
            throw new NotThere("The day has no file “" + asked.file() + "”.", Paths.day(day), "To the day");
        }
        var of = new FileDrawing.Of(new Printing(pages.visitor(request).system()), day, reduced);
        var view = new FilePage(desk.archive(), of, asked).view();
        var status = typed.faults().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT;
        return pages.show(
                request, new Pages.Sheet("file", new Formed<>(view, typed), view.name(), Frame.Place.DAYS), status);
    }

    /// Adds a run that was marked on the plot: another revision of the day.
    @PostMapping("/days/{day}/files/{file}/runs")
    ResponseEntity<String> add(
            HttpServletRequest request,
            @PathVariable("day") String dayPiece,
            @PathVariable("file") String filePiece,
            @RequestParam Map<String, String> sent) {
        String day = Paths.name(dayPiece);
        String file = Paths.name(filePiece);
        var reduced = reduced(day);
        var typed = Typed.of(sent).with("recording", file);
        var form = new WindowForm(reduced, typed);
        var ends = form.ends();
        var faults = new HashMap<>(form.faults());
        var trial = Trials.find(typed.get("trial"));
        var variant = trial.map(one -> variant(request, reduced, one, typed, faults));
        if (trial.isEmpty()) {
            faults.put("trial", "Which trial is it a run of?");
        }
        if (!faults.isEmpty() || ends.isEmpty() || variant.isEmpty()) {
            return show(request, day, chosen(file, "new"), typed.wrong(faults));
        }
        String id = trial.orElseThrow().declaration().id();
        var changed = Windows.added(reduced, id, variant.get(), ends.get());
        var stored = desk.archive().day(day).orElseThrow();
        var act = new Act(typed.get("who"), changed.what());
        desk.archive().revise(day, Correction.of(stored, reduced, changed.day()), act);
        long revision = desk.archive().day(day).orElseThrow().revision().number();
        return DayPages.remembering(
                act.who(), Paths.file(day, file, changed.runs().getFirst(), revision));
    }

    /// What is asked of the trial's runs, out of its own part of the form: fields are `TRIAL.variant.KEY`.
    private Variant variant(
            HttpServletRequest request,
            DayReduction.Result.Reduced reduced,
            Trial trial,
            Typed typed,
            Map<String, String> faults) {
        String prefix = trial.declaration().id() + ".";
        var own = new HashMap<String, String>();
        typed.values().forEach((field, value) -> {
            if (field.startsWith(prefix)) {
                own.put(field.substring(prefix.length()), value);
            }
        });
        var form = new RunForm(
                trial.declaration(), reduced.day(), pages.visitor(request).system(), Typed.of(own));
        var variant = form.variant();
        form.faults().forEach((field, why) -> faults.put(prefix + field, why));
        return variant;
    }

    private DayReduction.Result.Reduced reduced(String day) {
        return Reductions.of(desk.archive(), day)
                .orElseThrow(() ->
                        new NotThere("No test day “" + day + "” with usable files is here.", "/days", "To the days"));
    }
}
