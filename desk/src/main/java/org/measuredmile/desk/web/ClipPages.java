package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Map;
import org.measuredmile.archive.Act;
import org.measuredmile.desk.web.edit.Correction;
import org.measuredmile.desk.web.edit.SaidForm;
import org.measuredmile.desk.web.edit.Typed;
import org.measuredmile.desk.web.view.Clips;
import org.measuredmile.desk.web.view.Formed;
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

/// The words of a clip: the numbers said in it, and what a person makes of them.
@Controller
class ClipPages {
    private final Desk desk;
    private final Pages pages;

    ClipPages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/days/{day}/clips/{file}")
    ResponseEntity<String> clip(
            HttpServletRequest request,
            @PathVariable String day,
            @PathVariable String file,
            @RequestParam(defaultValue = "") String at) {
        return show(request, asked(request, Paths.name(day), Paths.name(file)), at, Typed.NOTHING);
    }

    private record Asked(String day, String file, DayReduction.Result.Reduced reduced, Clips clips) {}

    private ResponseEntity<String> show(HttpServletRequest request, Asked asked, String at, Typed typed) {
        var view = asked.clips().view(asked.file(), at);
        var status = typed.faults().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT;
        return pages.show(
                request, new Pages.Sheet("clip", new Formed<>(view, typed), view.title(), Frame.Place.DAYS), status);
    }

    /// Makes a reading of one number that was said: another revision of the day.
    @PostMapping("/days/{day}/clips/{file}")
    ResponseEntity<String> accept(
            HttpServletRequest request,
            @PathVariable String day,
            @PathVariable String file,
            @RequestParam Map<String, String> sent) {
        var asked = asked(request, Paths.name(day), Paths.name(file));
        var typed = Typed.of(sent);
        var said = asked.clips()
                .said(asked.file(), typed.get("at"))
                .orElseThrow(() -> new NotThere(
                        "Nothing was said at " + typed.get("at") + " s of this clip.",
                        Paths.clip(asked.day(), asked.file()),
                        "To the clip"));
        var form = new SaidForm(asked.reduced(), pages.visitor(request).system(), typed);
        return switch (form.read(said)) {
            case SaidForm.Read.Refused(Typed refused) -> show(request, asked, said.at(), refused);
            case SaidForm.Read.Kept(var after, String what) -> {
                var stored = desk.archive().day(asked.day()).orElseThrow();
                desk.archive()
                        .revise(
                                asked.day(),
                                Correction.of(stored, asked.reduced(), after),
                                new Act(typed.get("who"), what));
                yield DayPages.remembering(
                        typed.get("who"), Paths.clip(asked.day(), asked.file()) + "#said-" + said.at());
            }
        };
    }

    private Asked asked(HttpServletRequest request, String day, String file) {
        var reduced = Reductions.of(desk.archive(), day)
                .orElseThrow(() ->
                        new NotThere("No test day “" + day + "” with usable files is here.", "/days", "To the days"));
        var clip = Clips.find(reduced, file)
                .orElseThrow(() -> new NotThere(
                        "The day has no captions “" + file + "” that could be read.", Paths.day(day), "To the day"));
        var printing = new Printing(pages.visitor(request).system());
        return new Asked(day, file, reduced, new Clips(printing, day, reduced, clip));
    }
}
