package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.time.Clock;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.measuredmile.archive.Act;
import org.measuredmile.archive.StoredDay;
import org.measuredmile.desk.web.edit.Correction;
import org.measuredmile.desk.web.edit.CrewCode;
import org.measuredmile.desk.web.edit.Runs;
import org.measuredmile.desk.web.edit.Typed;
import org.measuredmile.desk.web.edit.Upload;
import org.measuredmile.desk.web.view.Days;
import org.measuredmile.desk.web.view.DaysView;
import org.measuredmile.desk.web.view.Formed;
import org.measuredmile.desk.web.view.Paths;
import org.measuredmile.desk.web.view.Printing;
import org.measuredmile.desk.web.view.Reductions;
import org.measuredmile.recording.day.PreRideCheck;
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
import org.springframework.web.multipart.MultipartFile;

/// The test days, and each: its check, its run sheets, its files and what was found in them.
@Controller
class DayPages {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.UK);

    private final Desk desk;
    private final Pages pages;
    private final Clock clock = Clock.systemUTC();

    DayPages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/days")
    ResponseEntity<String> days(HttpServletRequest request) {
        return list(request, Typed.NOTHING, HttpStatus.OK);
    }

    private ResponseEntity<String> list(HttpServletRequest request, Typed typed, HttpStatus status) {
        var page = new Formed<>(DaysView.of(desk.archive().days()), typed);
        return pages.show(request, new Pages.Sheet("days", page, "Test days", Frame.Place.DAYS), status);
    }

    /// Takes in a whole test-day folder.
    @PostMapping("/days/folder")
    ResponseEntity<String> folder(
            HttpServletRequest request,
            @RequestParam(defaultValue = "") String who,
            @RequestParam(defaultValue = "") String staged,
            @RequestParam(name = "files", required = false) List<MultipartFile> parts)
            throws IOException {
        var sent = Uploads.of(parts == null ? List.of() : parts, staged, desk.archive());
        var files = Upload.dayIn(sent.files());
        var typed = Typed.of(Map.of("who", who));
        String id = files.isEmpty() ? "" : Upload.folder(files.getFirst().path());
        var faults = new LinkedHashMap<String, String>();
        if (!CrewCode.isOne(typed.get("who"))) {
            faults.put("who", "Who takes it in? A crew code such as T1.");
        }
        if (!sent.fault().isEmpty()) {
            faults.put("files", sent.fault());
        } else if (id.isEmpty()) {
            faults.put(
                    "files",
                    sent.files().isEmpty()
                            ? "Choose a test day's folder, the one that holds day.yaml."
                            : "Among these files is not one folder that holds a day.yaml. Begin a test day and send "
                                    + "recordings on its own page.");
        } else if (desk.archive().day(id).isPresent()) {
            faults.put("files", "The archive has a day “" + id + "” already; add files on that day's own page.");
        }
        if (!faults.isEmpty()) {
            return list(request, typed.wrong(faults), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        desk.archive().importDay(Upload.asDay(id, files), new Act(who.strip(), "folder taken in by browser"));
        desk.archive().waiting().taken(sent.waited());
        return remembering(who, Paths.day(id));
    }

    @GetMapping("/days/{id}")
    ResponseEntity<String> day(
            HttpServletRequest request, @PathVariable String id, @RequestParam(defaultValue = "0") long since) {
        return show(request, Paths.name(id), since, Typed.NOTHING);
    }

    private ResponseEntity<String> show(HttpServletRequest request, String id, long since, Typed typed) {
        stored(id);
        var view = new Days(desk.archive(), new Printing(pages.visitor(request).system()), id, since).view();
        var status = typed.faults().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT;
        return pages.show(
                request, new Pages.Sheet("day", new Formed<>(view, typed), view.title(), Frame.Place.DAYS), status);
    }

    /// Keeps the files that were sent, whatever is in them.
    @PostMapping("/days/{id}/files")
    ResponseEntity<String> files(
            HttpServletRequest request,
            @PathVariable String id,
            @RequestParam(defaultValue = "") String who,
            @RequestParam(defaultValue = "") String staged,
            @RequestParam(name = "files", required = false) List<MultipartFile> parts)
            throws IOException {
        var stored = stored(id);
        var sent = Uploads.of(parts == null ? List.of() : parts, staged, desk.archive());
        var faults = new LinkedHashMap<String, String>();
        if (!CrewCode.isOne(who.strip())) {
            faults.put("who.files", "Who sends them? A crew code such as T1.");
        }
        var files = sent.files();
        if (!sent.fault().isEmpty()) {
            faults.put("files", sent.fault());
        } else if (files.isEmpty()) {
            faults.put("files", "No file was chosen.");
        }
        if (!faults.isEmpty()) {
            return show(request, id, 0, Typed.of(Map.of("who.files", who)).wrong(faults));
        }
        long before = stored.revision().number();
        desk.archive()
                .revise(
                        id,
                        Upload.into(stored, files),
                        new Act(who.strip(), Printing.count(files.size(), "file", "files") + " sent by browser"));
        desk.archive().waiting().taken(sent.waited());
        return remembering(who, Paths.day(id) + "?since=" + before + "#files");
    }

    /// Ticks the pre-ride check, by two people.
    @PostMapping("/days/{id}/check")
    ResponseEntity<String> check(
            HttpServletRequest request, @PathVariable String id, @RequestParam Map<String, String> sent) {
        var stored = stored(id);
        var reduced = reduced(id);
        var typed = Typed.of(sent);
        String by = typed.get("by");
        String second = typed.get("secondPerson");
        var faults = new LinkedHashMap<String, String>();
        if (!CrewCode.isOne(by)) {
            faults.put("by", "Who checked the bike? A crew code such as M1.");
        }
        if (!CrewCode.isOne(second)) {
            faults.put("secondPerson", "Who ticked it? A second crew code.");
        } else if (second.equals(by)) {
            faults.put("secondPerson", "A second person has to tick it: " + by + " did the check.");
        }
        if (!faults.isEmpty()) {
            return show(request, id, 0, typed.wrong(faults));
        }
        String time = CLOCK.format(LocalTime.now(clock.withZone(zone(reduced))));
        var after = Runs.checked(reduced.day(), new PreRideCheck(by, second, time));
        desk.archive().revise(id, Correction.of(stored, reduced, after), new Act(second, "pre-ride check ticked"));
        return remembering(second, Paths.day(id) + "#check");
    }

    /// Confirms the found runs that were ticked.
    @PostMapping("/days/{id}/proposals")
    ResponseEntity<String> proposals(
            HttpServletRequest request,
            @PathVariable String id,
            @RequestParam(defaultValue = "") String trial,
            @RequestParam(defaultValue = "") String who,
            @RequestParam(name = "run", required = false) List<String> runs) {
        var stored = stored(id);
        var reduced = reduced(id);
        var faults = new LinkedHashMap<String, String>();
        if (!CrewCode.isOne(who.strip())) {
            faults.put("who." + trial, "Who confirms? A crew code such as T1.");
        }
        if (runs == null || runs.isEmpty()) {
            faults.put("proposals." + trial, "Tick the runs that were ridden.");
        }
        if (!faults.isEmpty() || runs == null) {
            return show(request, id, 0, Typed.of(Map.of("who." + trial, who)).wrong(faults));
        }
        var chosen = new LinkedHashMap<RunResult, String>();
        Stream.ofNullable(reduced.outcomes().get(trial))
                .flatMap(outcome -> outcome.runs().stream())
                .filter(run -> run.state() == Run.State.PROPOSED && runs.contains(run.run()))
                .forEach(run -> chosen.put(run, trial));
        desk.archive()
                .revise(
                        id,
                        Correction.of(stored, reduced, Runs.confirmed(reduced, chosen)),
                        new Act(who.strip(), chosen.size() + " found runs confirmed"));
        return remembering(who, Paths.day(id) + "#runs");
    }

    private static ZoneId zone(DayReduction.Result.Reduced reduced) {
        return reduced.day().timeZone();
    }

    private StoredDay stored(String id) {
        return desk.archive()
                .day(id)
                .orElseThrow(() ->
                        new NotThere("No test day “" + id + "” is in this " + "archive.", "/days", "To the days"));
    }

    private DayReduction.Result.Reduced reduced(String id) {
        return Reductions.of(desk.archive(), id)
                .orElseThrow(() -> new NotThere(
                        "The files of “" + id + "” need a correction before this can be done.",
                        Paths.day(id),
                        "To the day"));
    }

    static ResponseEntity<String> remembering(String who, String path) {
        return ResponseEntity.status(HttpStatus.SEE_OTHER)
                .header(
                        org.springframework.http.HttpHeaders.SET_COOKIE,
                        Visitor.remember(who.strip()).toString())
                .header(org.springframework.http.HttpHeaders.LOCATION, path)
                .build();
    }
}
