package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.measuredmile.archive.json.Json;
import org.measuredmile.desk.StandingsJson;
import org.measuredmile.desk.web.view.Printing;
import org.measuredmile.desk.web.view.StandingCsv;
import org.measuredmile.desk.web.view.StandingWish;
import org.measuredmile.desk.web.view.Standings;
import org.measuredmile.desk.web.view.StandingsView;
import org.measuredmile.trial.Trials;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/// Standings: the order of a stated population in one figure and variant.
@Controller
class StandingPages {
    private static final MediaType CSV = new MediaType("text", "csv", StandardCharsets.UTF_8);

    /// The list of all standings depends on the figures alone.
    private record AllThereAre() {}

    private final Desk desk;
    private final Pages pages;

    StandingPages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/standings")
    ResponseEntity<String> contents(HttpServletRequest request) {
        var view = desk.standings().whatIsMade(new AllThereAre(), () -> Standings.contents(desk.archive()));
        return pages.show(request, new Pages.Sheet("standings", view, "Standings", Frame.Place.STANDINGS));
    }

    @GetMapping("/standings/{figure}")
    ResponseEntity<String> standing(
            HttpServletRequest request, @PathVariable String figure, @RequestParam Map<String, String> asked) {
        var standings = standings(request, figure);
        String here = "/standings/" + figure;
        var links = new StandingsView.Links(here + "/csv" + query(request), here + "/json" + query(request));
        var view = standings.view(standings.ask(StandingWish.of(asked)), links);
        return pages.show(
                request, new Pages.Sheet("standing", view, view.heading().title(), Frame.Place.STANDINGS));
    }

    @GetMapping("/standings/{figure}/csv")
    ResponseEntity<String> csv(
            HttpServletRequest request, @PathVariable String figure, @RequestParam Map<String, String> asked) {
        var standing = standings(request, figure).ask(StandingWish.of(asked)).standing();
        return ResponseEntity.ok()
                .contentType(CSV)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"standing.csv\"")
                .body(StandingCsv.of(standing));
    }

    /// The same as `mile standings --json`; with `full` in the address the probability of every rank.
    @GetMapping("/standings/{figure}/json")
    ResponseEntity<String> json(
            HttpServletRequest request, @PathVariable String figure, @RequestParam Map<String, String> asked) {
        var found = standings(request, figure).ask(StandingWish.of(asked));
        var wish = new StandingsJson.Wish(asked.containsKey("full"), found.against());
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_JSON)
                .body(Json.compact(Json.array().add(StandingsJson.write(found.standing(), wish))));
    }

    private Standings standings(HttpServletRequest request, String figure) {
        var trial = Trials.delivering(figure)
                .orElseThrow(
                        () -> new NotThere("No trial delivers “" + figure + "”.", "/standings", "To all standings"))
                .declaration();
        var printing = new Printing(pages.visitor(request).system());
        return new Standings(desk.standings(), printing, trial, trial.requireFigure(figure));
    }

    private static String query(HttpServletRequest request) {
        return request.getQueryString() == null ? "" : "?" + request.getQueryString();
    }
}
