package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.archive.Act;
import org.measuredmile.archive.SentReply;
import org.measuredmile.comparison.verdict.ReplySheet.Dates;
import org.measuredmile.desk.BikeClaims;
import org.measuredmile.desk.web.edit.CrewCode;
import org.measuredmile.desk.web.edit.Typed;
import org.measuredmile.desk.web.view.BikeClaimsPage;
import org.measuredmile.desk.web.view.Paths;
import org.measuredmile.desk.web.view.Printing;
import org.measuredmile.desk.web.view.ReplyView;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/// A bike's claims with their verdicts, and the sheet for its maker.
@Controller
class ClaimPages {
    private static final MediaType CSV = new MediaType("text", "csv", StandardCharsets.UTF_8);
    private static final String SENT = "sent";
    private static final String DUE = "due";
    private static final String WHO = "who";

    private final Desk desk;
    private final Pages pages;
    private final Clock clock = Clock.systemUTC();

    ClaimPages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/bikes/{id}/claims")
    ResponseEntity<String> claims(HttpServletRequest request, @PathVariable("id") String piece) {
        var view = page(request, of(piece)).view();
        return pages.show(request, new Pages.Sheet("claims", view, view.title() + ", claims", Frame.Place.FLEET));
    }

    @GetMapping("/bikes/{id}/claims/csv")
    ResponseEntity<String> csv(HttpServletRequest request, @PathVariable("id") String piece) {
        return ResponseEntity.ok()
                .contentType(CSV)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"claims.csv\"")
                .body(page(request, of(piece)).csv());
    }

    @GetMapping("/bikes/{id}/reply")
    ResponseEntity<String> reply(
            HttpServletRequest request, @PathVariable("id") String piece, @RequestParam Map<String, String> asked) {
        return sheet(request, of(piece), Typed.of(asked), HttpStatus.OK);
    }

    /// Records that the sheet was sent, as it stands now.
    @PostMapping("/bikes/{id}/reply")
    ResponseEntity<String> sent(
            HttpServletRequest request, @PathVariable("id") String piece, @RequestParam Map<String, String> typed) {
        var claims = of(piece);
        var form = Typed.of(typed);
        var faults = new LinkedHashMap<String, String>();
        if (!CrewCode.isOne(form.get(WHO).strip())) {
            faults.put(WHO, "Who sent it? A crew code such as T1.");
        }
        var sent = day(form.get(SENT));
        var due = day(form.get(DUE));
        if (sent.isEmpty()) {
            faults.put(SENT, "When was it sent? A day such as 2031-05-04.");
        }
        if (due.isEmpty()) {
            faults.put(DUE, "When is an answer due? A day such as 2031-05-11.");
        } else if (sent.isPresent() && due.get().isBefore(sent.get())) {
            faults.put(DUE, "The answer is due before the sheet is sent; give a later day.");
        }
        if (!faults.isEmpty()) {
            return sheet(request, claims, form.wrong(faults), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        String id = claims.bike().bike().id();
        var dates = new Dates(sent.orElseThrow(), due.orElseThrow());
        var text = claims.reply(dates, pages.visitor(request).system()).text();
        desk.archive()
                .keepSent(
                        new SentReply.Sheet(id, text, dates.sent(), dates.due()),
                        new Act(
                                form.get(WHO).strip(),
                                "sent to the maker on " + dates.sent() + ", an answer is due by " + dates.due()));
        return DayPages.remembering(form.get(WHO), Paths.reply(id) + "#kept");
    }

    private ResponseEntity<String> sheet(
            HttpServletRequest request, BikeClaims claims, Typed typed, HttpStatus status) {
        var usual = Dates.from(day(typed.get(SENT)).orElseGet(() -> LocalDate.now(clock)));
        var due = day(typed.get(DUE)).filter(one -> !one.isBefore(usual.sent())).orElse(usual.due());
        var dates = new Dates(usual.sent(), due);
        var printing = new Printing(pages.visitor(request).system());
        String id = claims.bike().bike().id();
        var form = typed.with(SENT, typed.getOr(SENT, dates.sent().toString()))
                .with(DUE, typed.getOr(DUE, dates.due().toString()));
        var view = ReplyView.of(
                id, claims.reply(dates, printing.system()), desk.archive().sent(id), form);
        return pages.show(
                request,
                new Pages.Sheet("reply", view, view.sheet().title() + ", for its maker", Frame.Place.FLEET),
                status);
    }

    private static Optional<LocalDate> day(String text) {
        try {
            return text.isBlank() ? Optional.empty() : Optional.of(LocalDate.parse(text.strip()));
        } catch (DateTimeParseException noDay) {
            return Optional.empty();
        }
    }

    private BikeClaimsPage page(HttpServletRequest request, BikeClaims claims) {
        return new BikeClaimsPage(claims, new Printing(pages.visitor(request).system()));
    }

    private BikeClaims of(String piece) {
        String id = Paths.name(piece);
        return BikeClaims.of(desk.archive(), id)
                .orElseThrow(() -> new NotThere("No bike “" + id + "” is in this archive.", "/", "To the fleet"));
    }
}
