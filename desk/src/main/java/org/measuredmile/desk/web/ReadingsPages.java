package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;
import org.measuredmile.archive.Act;
import org.measuredmile.desk.web.edit.Correction;
import org.measuredmile.desk.web.edit.DayReadings;
import org.measuredmile.desk.web.edit.RunForm;
import org.measuredmile.desk.web.edit.Runs;
import org.measuredmile.desk.web.edit.Typed;
import org.measuredmile.desk.web.view.Paths;
import org.measuredmile.desk.web.view.Printing;
import org.measuredmile.desk.web.view.Reductions;
import org.measuredmile.desk.web.view.Sheets;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.Trials;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/// The run sheet of a trial on a test day: a form made from the trial's declaration.
@Controller
class ReadingsPages {
    private static final Duration CLOCKS_APART = Duration.ofMinutes(2);
    private static final Duration KEPT_ON_A_PHONE = Duration.ofDays(7);

    private final Desk desk;
    private final Pages pages;
    private final Clock clock = Clock.systemUTC();

    ReadingsPages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/days/{day}/trials/{trial}")
    ResponseEntity<String> form(
            HttpServletRequest request,
            @PathVariable String day,
            @PathVariable String trial,
            @RequestParam Map<String, String> asked) {
        var typed = new LinkedHashMap<String, String>();
        typed.put("who", pages.visitor(request).who());
        // The variant of the run just kept stays chosen for the next.
        asked.forEach((field, value) -> {
            if (field.startsWith("variant.")) {
                typed.put(field, value);
            }
        });
        return show(request, new Asked(day, trial, Typed.of(typed)), asked.getOrDefault("kept", ""));
    }

    private record Asked(String day, String trial, Typed typed) {}

    private ResponseEntity<String> show(HttpServletRequest request, Asked asked, String kept) {
        var trial = trial(asked.trial());
        var view = new Sheets(
                        new Printing(pages.visitor(request).system()),
                        asked.day(),
                        reduced(asked.day()),
                        trial,
                        asked.typed())
                .view(kept);
        var status = asked.typed().faults().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT;
        return pages.show(
                request, new Pages.Sheet("sheet", view, trial.title() + ", run sheet", Frame.Place.DAYS), status);
    }

    /// Keeps one run with its readings.
    @PostMapping("/days/{day}/trials/{trial}")
    ResponseEntity<String> keep(
            HttpServletRequest request,
            @PathVariable String day,
            @PathVariable String trial,
            @RequestParam Map<String, String> sent) {
        var reduced = reduced(day);
        var typed = Typed.of(sent);
        if (typed.get("act").equals("look")) {
            return show(request, new Asked(day, trial, typed), "");
        }
        var form =
                new RunForm(trial(trial), reduced.day(), pages.visitor(request).system(), typed);
        String id = Runs.nextId(reduced, trial);
        return switch (form.read(id, typedAt(typed))) {
            case RunForm.Read.Refused(Typed refused) -> show(request, new Asked(day, trial, refused), "");
            case RunForm.Read.Kept kept
            when typed.values().containsKey("typedAt")
                    && Runs.twin(reduced.day(), kept).isPresent() -> {
                // The answer to its first sending was lost on the way: it is there already.
                String twin = Runs.twin(reduced.day(), kept).get();
                yield DayPages.remembering(typed.get("who"), Paths.trial(day, trial) + next(twin, typed) + "#kept");
            }
            case RunForm.Read.Kept kept -> {
                var act = new Act(typed.get("who"), "run " + id + " kept");
                revise(day, reduced, Runs.adding(reduced.day(), kept), act);
                yield DayPages.remembering(typed.get("who"), Paths.trial(day, trial) + next(id, typed) + "#kept");
            }
        };
    }

    /// When the run was typed: a phone without a signal sends it later. Now, where it does not say or cannot be.
    private Instant typedAt(Typed typed) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.SECONDS);
        try {
            Instant said = Instant.parse(typed.get("typedAt")).truncatedTo(ChronoUnit.SECONDS);
            boolean canBe = !said.isAfter(now.plus(CLOCKS_APART)) && said.isAfter(now.minus(KEPT_ON_A_PHONE));
            return canBe ? said : now;
        } catch (DateTimeException noTime) {
            return now;
        }
    }

    private static String next(String kept, Typed typed) {
        var query = new StringBuilder("?kept=").append(Pages.piece(kept));
        typed.values().forEach((field, value) -> {
            if (field.startsWith("variant.") && !value.isEmpty()) {
                query.append('&').append(Pages.piece(field)).append('=').append(Pages.piece(value));
            }
        });
        return query.toString();
    }

    /// Keeps the readings that are taken once a day.
    @PostMapping("/days/{day}/trials/{trial}/day")
    ResponseEntity<String> keepOfDay(
            HttpServletRequest request,
            @PathVariable String day,
            @PathVariable String trial,
            @RequestParam Map<String, String> sent) {
        var reduced = reduced(day);
        var typed = Typed.of(sent);
        var form = new DayReadings(
                trial(trial), reduced.day(), pages.visitor(request).system(), typed);
        return switch (form.read(clock.instant().truncatedTo(ChronoUnit.SECONDS))) {
            case DayReadings.Read.Refused(Typed refused) -> show(request, new Asked(day, trial, refused), "");
            case DayReadings.Read.Kept(var readings) -> {
                var after = Runs.withDayReadings(reduced.day(), readings);
                revise(day, reduced, after, new Act(typed.get("who"), "readings of the day kept"));
                yield DayPages.remembering(typed.get("who"), Paths.trial(day, trial) + "#of-day");
            }
        };
    }

    /// Says whether what is typed now lies inside the limits; nothing is kept.
    @PostMapping("/days/{day}/trials/{trial}/told")
    ResponseEntity<String> told(
            HttpServletRequest request,
            @PathVariable String day,
            @PathVariable String trial,
            @RequestParam Map<String, String> sent) {
        var sheets = new Sheets(
                new Printing(pages.visitor(request).system()), day, reduced(day), trial(trial), Typed.of(sent));
        return pages.part("told", sheets.told());
    }

    private void revise(String day, DayReduction.Result.Reduced reduced, TestDay after, Act act) {
        var stored = desk.archive().day(day).orElseThrow();
        desk.archive().revise(day, Correction.of(stored, reduced, after), act);
    }

    private static Declaration trial(String id) {
        return Trials.find(id)
                .orElseThrow(() -> new NotThere("There is no trial “" + id + "”.", "/handbook", "To the handbook"))
                .declaration();
    }

    private DayReduction.Result.Reduced reduced(String day) {
        return Reductions.of(desk.archive(), day)
                .orElseThrow(() ->
                        new NotThere("No test day “" + day + "” with usable files is here.", "/days", "To the days"));
    }
}
