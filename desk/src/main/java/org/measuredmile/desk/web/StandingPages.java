package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Map;
import org.measuredmile.desk.web.view.Printing;
import org.measuredmile.desk.web.view.Standings;
import org.measuredmile.desk.web.view.StandingsView;
import org.measuredmile.recording.day.Variant;
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

    private final Desk desk;
    private final Pages pages;

    StandingPages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/standings")
    ResponseEntity<String> contents(HttpServletRequest request) {
        var view = Standings.contents(desk.archive());
        return pages.show(request, new Pages.Sheet("standings", view, "Standings", Frame.Place.STANDINGS));
    }

    @GetMapping("/standings/{figure}")
    ResponseEntity<String> standing(
            HttpServletRequest request, @PathVariable String figure, @RequestParam Map<String, String> asked) {
        var standings = standings(request, figure);
        var wish = wish(asked);
        var view = standings.view(
                standings.ask(variant(asked), among(wish)), wish, "/standings/" + figure + "/csv" + query(request));
        return pages.show(request, new Pages.Sheet("standing", view, view.title(), Frame.Place.STANDINGS));
    }

    @GetMapping("/standings/{figure}/csv")
    ResponseEntity<String> csv(
            HttpServletRequest request, @PathVariable String figure, @RequestParam Map<String, String> asked) {
        var standings = standings(request, figure);
        var standing = standings.ask(variant(asked), among(wish(asked))).standing();
        return ResponseEntity.ok()
                .contentType(CSV)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"standing.csv\"")
                .body(standings.csv(standing));
    }

    private Standings standings(HttpServletRequest request, String figure) {
        var trial = Trials.delivering(figure)
                .orElseThrow(
                        () -> new NotThere("No trial delivers “" + figure + "”.", "/standings", "To all standings"))
                .declaration();
        var printing = new Printing(pages.visitor(request).system());
        return new Standings(desk.archive(), printing, trial, trial.requireFigure(figure));
    }

    private static Variant variant(Map<String, String> asked) {
        var variant = Variant.NONE;
        for (var entry : asked.entrySet()) {
            if (entry.getKey().startsWith("v.") && !entry.getValue().isBlank()) {
                variant = variant.with(
                        entry.getKey().substring(2), entry.getValue().strip());
            }
        }
        return variant;
    }

    private static StandingsView.Wish wish(Map<String, String> asked) {
        return new StandingsView.Wish(
                asked.getOrDefault("category", "").strip(),
                asked.getOrDefault("drive", "").strip(),
                asked.containsKey("ledger"),
                asked.getOrDefault("among", "").strip());
    }

    /// The population expression; what the fields say stands before it.
    private static String among(StandingsView.Wish wish) {
        var terms = new ArrayList<String>();
        if (!wish.category().isEmpty()) {
            terms.add("category=" + wish.category());
        }
        if (!wish.drive().isEmpty()) {
            terms.add("drive=" + wish.drive());
        }
        if (wish.ledger()) {
            terms.add("ledger=yes");
        }
        if (!wish.among().isEmpty()) {
            terms.add(wish.among());
        }
        return String.join(" ", terms);
    }

    private static String query(HttpServletRequest request) {
        return request.getQueryString() == null ? "" : "?" + request.getQueryString();
    }
}
