package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.measuredmile.desk.ChosenBikes;
import org.measuredmile.desk.SideBySideCsv;
import org.measuredmile.desk.web.view.Printing;
import org.measuredmile.desk.web.view.Shortlists;
import org.measuredmile.desk.web.view.SidesBySide;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/// Bikes side by side, and a reader's shortlist.
@Controller
class SideBySidePages {
    private static final MediaType CSV = new MediaType("text", "csv", StandardCharsets.UTF_8);

    private final Desk desk;
    private final Pages pages;

    SideBySidePages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/side-by-side")
    ResponseEntity<String> sideBySide(HttpServletRequest request) {
        var printing = new Printing(pages.visitor(request).system());
        var view = new SidesBySide(desk.archive(), printing).view(named(request));
        return pages.show(request, new Pages.Sheet("side-by-side", view, view.title(), Frame.Place.SIDE_BY_SIDE));
    }

    @GetMapping("/side-by-side/csv")
    ResponseEntity<String> csv(HttpServletRequest request) {
        var chosen = ChosenBikes.named(desk.archive(), named(request));
        if (!chosen.faults().isEmpty()) {
            throw new NotThere(String.join(" ", chosen.faults()), "/side-by-side", "To the choice of bikes");
        }
        return ResponseEntity.ok()
                .contentType(CSV)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"side-by-side.csv\"")
                .body(SideBySideCsv.write(chosen.sideBySide(desk.archive())));
    }

    @GetMapping("/shortlist")
    ResponseEntity<String> shortlist(HttpServletRequest request, @RequestParam(defaultValue = "") String wish) {
        var printing = new Printing(pages.visitor(request).system());
        var view = new Shortlists(desk.archive(), printing).view(wish);
        return pages.show(request, new Pages.Sheet("shortlist", view, "A shortlist", Frame.Place.SIDE_BY_SIDE));
    }

    /// The bikes named in the query; the form sends an empty name for a field without a choice.
    private static List<String> named(HttpServletRequest request) {
        String[] bikes = request.getParameterValues("bike");
        return bikes == null
                ? List.of()
                : List.of(bikes).stream().filter(one -> !one.isBlank()).toList();
    }
}
