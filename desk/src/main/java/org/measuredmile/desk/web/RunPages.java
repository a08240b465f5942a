package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.archive.Act;
import org.measuredmile.desk.web.edit.Correction;
import org.measuredmile.desk.web.edit.CrewCode;
import org.measuredmile.desk.web.edit.Runs;
import org.measuredmile.desk.web.edit.Typed;
import org.measuredmile.desk.web.edit.WindowForm;
import org.measuredmile.desk.web.edit.Windows;
import org.measuredmile.desk.web.view.Formed;
import org.measuredmile.desk.web.view.Paths;
import org.measuredmile.desk.web.view.Printing;
import org.measuredmile.desk.web.view.Reductions;
import org.measuredmile.desk.web.view.RunPage;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.RunResult;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/// A run: its trace, its values, whether it counts, and what a person says of it.
@Controller
class RunPages {
    private final Desk desk;
    private final Pages pages;
    private final FilePages files;

    RunPages(Desk desk, Pages pages, FilePages files) {
        this.desk = desk;
        this.pages = pages;
        this.files = files;
    }

    @GetMapping("/days/{day}/runs/{run}")
    ResponseEntity<String> run(HttpServletRequest request, @PathVariable String day, @PathVariable String run) {
        return show(request, Paths.name(day), Paths.name(run), Typed.NOTHING);
    }

    private ResponseEntity<String> show(HttpServletRequest request, String day, String run, Typed typed) {
        var reduced = reduced(day);
        var view = RunPage.view(new Printing(pages.visitor(request).system()), day, reduced, found(reduced, day, run));
        var status = typed.faults().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT;
        return pages.show(
                request, new Pages.Sheet("run", new Formed<>(view, typed), view.title(), Frame.Place.DAYS), status);
    }

    /// Confirms the run, or voids it for a cause: another revision of the day.
    @PostMapping("/days/{day}/runs/{run}")
    ResponseEntity<String> decide(
            HttpServletRequest request,
            @PathVariable("day") String dayPiece,
            @PathVariable("run") String runPiece,
            @RequestParam Map<String, String> sent) {
        String day = Paths.name(dayPiece);
        String run = Paths.name(runPiece);
        var reduced = reduced(day);
        var found = found(reduced, day, run);
        var typed = Typed.of(sent);
        var faults = new LinkedHashMap<String, String>();
        if (!CrewCode.isOne(typed.get("who"))) {
            faults.put("who", "Who says so? A crew code such as T1.");
        }
        boolean voids = typed.get("act").equals("void");
        String reason = voids ? reason(found, typed, faults) : "";
        var ends = voids ? Optional.<RunResult.Stretch>empty() : changedEnds(reduced, found, typed, faults);
        if (!faults.isEmpty()) {
            return refused(request, day, run, typed.wrong(faults));
        }
        if (ends.isPresent()) {
            var asked = asked(day, run, sent);
            return kept(asked, Windows.confirmed(reduced, asked.shown(), ends.get()));
        }
        var decision = new Runs.Decision(found.trial().id(), voids ? Run.State.VOID : Run.State.CONFIRMED, reason);
        var after = Runs.decided(reduced, found.run(), decision);
        boolean wasWritten = Runs.isWritten(reduced.day(), found.run());
        String id = wasWritten ? run : after.runs().getLast().id();
        String why = "run " + id + (voids ? " void: " + reason : " confirmed");
        var stored = desk.archive().day(day).orElseThrow();
        desk.archive().revise(day, Correction.of(stored, reduced, after), new Act(typed.get("who"), why));
        return onTo(day, id, typed);
    }

    /// Sets both ends of the run, as dragged on the plot or typed: another revision of the day.
    @PostMapping("/days/{day}/runs/{run}/window")
    ResponseEntity<String> window(
            HttpServletRequest request,
            @PathVariable("day") String dayPiece,
            @PathVariable("run") String runPiece,
            @RequestParam Map<String, String> sent) {
        var asked = asked(Paths.name(dayPiece), Paths.name(runPiece), sent);
        var ends = asked.form().ends();
        return ends.isEmpty()
                ? refused(request, asked.day(), asked.run(), asked.faulty())
                : kept(asked, Windows.moved(asked.reduced(), asked.shown(), ends.get()));
    }

    /// Makes two runs of one: another revision of the day.
    @PostMapping("/days/{day}/runs/{run}/split")
    ResponseEntity<String> split(
            HttpServletRequest request,
            @PathVariable("day") String dayPiece,
            @PathVariable("run") String runPiece,
            @RequestParam Map<String, String> sent) {
        var asked = asked(Paths.name(dayPiece), Paths.name(runPiece), sent);
        var cut = asked.form().cut();
        return cut.isEmpty()
                ? refused(request, asked.day(), asked.run(), asked.faulty())
                : kept(asked, Windows.split(asked.reduced(), asked.shown(), cut.get()));
    }

    /// A change of a run's ends that somebody asked for.
    private record Asked(
            String day,
            String run,
            DayReduction.Result.Reduced reduced,
            Windows.Shown shown,
            Typed typed,
            WindowForm form) {
        Typed faulty() {
            return typed.wrong(form.faults());
        }
    }

    private Asked asked(String day, String run, Map<String, String> sent) {
        var reduced = reduced(day);
        var found = found(reduced, day, run);
        var typed = Typed.of(sent);
        return new Asked(
                day,
                run,
                reduced,
                new Windows.Shown(found.trial().id(), found.run()),
                typed,
                new WindowForm(reduced, found.run(), typed));
    }

    private ResponseEntity<String> kept(Asked asked, Windows.Changed changed) {
        String why = asked.typed().get("why");
        var act = new Act(asked.typed().get("who"), changed.what() + (why.isEmpty() ? "" : ": " + why));
        var stored = desk.archive().day(asked.day()).orElseThrow();
        desk.archive().revise(asked.day(), Correction.of(stored, asked.reduced(), changed.day()), act);
        return onTo(asked.day(), changed.runs().getFirst(), asked.typed());
    }

    /// Back to where it was decided, with the new state: the file's plot, else the run's own page.
    private ResponseEntity<String> onTo(String day, String run, Typed typed) {
        String file = typed.get("file");
        long revision = desk.archive().day(day).orElseThrow().revision().number();
        return DayPages.remembering(
                typed.get("who"), file.isEmpty() ? Paths.run(day, run) : Paths.file(day, file, run, revision));
    }

    private ResponseEntity<String> refused(HttpServletRequest request, String day, String run, Typed typed) {
        return typed.get("file").isEmpty()
                ? show(request, day, run, typed)
                : files.show(request, day, FilePages.chosen(typed.get("file"), run), typed);
    }

    /// Ends that the form which confirms a run holds otherwise than they were shown: they are part of what is
    /// confirmed.
    private static Optional<RunResult.Stretch> changedEnds(
            DayReduction.Result.Reduced reduced, RunPage.Found found, Typed typed, Map<String, String> faults) {
        var shown = Windows.of(reduced.day(), found.run());
        if (shown.isEmpty() || typed.get("from").isEmpty() || typed.get("to").isEmpty()) {
            return Optional.empty();
        }
        var form = new WindowForm(reduced, found.run(), typed);
        var ends = form.ends();
        faults.putAll(form.faults());
        return ends.filter(to -> Math.abs(to.fromS() - shown.get().fromS()) > 0.0006
                || Math.abs(to.toS() - shown.get().toS()) > 0.0006);
    }

    private static String reason(RunPage.Found found, Typed typed, Map<String, String> faults) {
        String cause = typed.get("cause");
        if (cause.equals("other")) {
            if (typed.get("other").isEmpty()) {
                faults.put("other", "Write in a few words why it does not count.");
            }
            return "other: " + typed.get("other");
        }
        if (found.trial().causes().stream().noneMatch(one -> one.code().equals(cause))) {
            faults.put("cause", "Choose a cause; its result may not be one.");
        }
        return cause;
    }

    private DayReduction.Result.Reduced reduced(String day) {
        return Reductions.of(desk.archive(), day)
                .orElseThrow(() ->
                        new NotThere("No test day “" + day + "” with usable files is here.", "/days", "To the days"));
    }

    private static RunPage.Found found(DayReduction.Result.Reduced reduced, String day, String run) {
        return RunPage.find(reduced, run)
                .orElseThrow(() -> new NotThere("The day has no run “" + run + "”.", Paths.day(day), "To the day"));
    }
}
