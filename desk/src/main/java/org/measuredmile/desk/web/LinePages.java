package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.nio.charset.StandardCharsets;
import org.measuredmile.comparison.expected.Lines;
import org.measuredmile.desk.web.view.ControlCharts;
import org.measuredmile.desk.web.view.ExpectedLines;
import org.measuredmile.desk.web.view.Printing;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/// Expected-value lines, and the control bike.
@Controller
class LinePages {
    private static final MediaType CSV = new MediaType("text", "csv", StandardCharsets.UTF_8);

    private final Desk desk;
    private final Pages pages;

    LinePages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/standings/lines/{line}")
    ResponseEntity<String> line(HttpServletRequest request, @PathVariable String line) {
        var view = lines(request, line).view();
        return pages.show(request, new Pages.Sheet("line", view, view.title(), Frame.Place.STANDINGS));
    }

    @GetMapping("/standings/lines/{line}/csv")
    ResponseEntity<String> lineCsv(HttpServletRequest request, @PathVariable String line) {
        return csv("line.csv", lines(request, line).csv());
    }

    private ExpectedLines lines(HttpServletRequest request, String id) {
        var line = Lines.of(id)
                .orElseThrow(() -> new NotThere("There is no line “" + id + "”.", "/standings", "To all standings"));
        return new ExpectedLines(desk.archive(), printing(request), line);
    }

    private Printing printing(HttpServletRequest request) {
        return new Printing(pages.visitor(request).system());
    }

    @GetMapping("/standings/control")
    ResponseEntity<String> control(
            HttpServletRequest request,
            @RequestParam(defaultValue = "") String bike,
            @RequestParam(defaultValue = "") String figure,
            @RequestParam(defaultValue = "") String variant) {
        var charts = new ControlCharts(desk.archive(), printing(request));
        var wish = new ControlCharts.Wish(bike, figure, variant);
        if (!bike.isEmpty() && charts.bike(wish).isEmpty()) {
            throw new NotThere("There is no bike “" + bike + "”.", "/standings/control", "To the control bike");
        }
        var view = charts.view(wish);
        return pages.show(request, new Pages.Sheet("control", view, "Control bike", Frame.Place.STANDINGS));
    }

    @GetMapping("/standings/control/csv")
    ResponseEntity<String> controlCsv(
            HttpServletRequest request,
            @RequestParam(defaultValue = "") String bike,
            @RequestParam(defaultValue = "") String figure,
            @RequestParam(defaultValue = "") String variant) {
        return new ControlCharts(desk.archive(), printing(request))
                .csv(new ControlCharts.Wish(bike, figure, variant))
                .map(text -> csv("control.csv", text))
                .orElseThrow(() -> new NotThere(
                        "No figure of a bike on several days fits this.", "/standings/control", "To the control bike"));
    }

    private static ResponseEntity<String> csv(String name, String text) {
        return ResponseEntity.ok()
                .contentType(CSV)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"")
                .body(text);
    }
}
