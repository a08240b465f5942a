package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import org.measuredmile.desk.web.view.FleetView;
import org.measuredmile.desk.web.view.Fleets;
import org.measuredmile.desk.web.view.Printing;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/// The fleet: every bike with the figures that speak for its trials.
@Controller
class FleetPages {
    private final Desk desk;
    private final Pages pages;

    FleetPages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/")
    ResponseEntity<String> fleet(
            HttpServletRequest request,
            @RequestParam(defaultValue = "") String category,
            @RequestParam(defaultValue = "name") String order) {
        var page = new Fleets(
                        desk.archive(), new Printing(pages.visitor(request).system()))
                .view(new FleetView.Wish(category, order));
        return pages.show(request, new Pages.Sheet("fleet", page, "Fleet", Frame.Place.FLEET));
    }
}
