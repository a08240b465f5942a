package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import org.measuredmile.desk.web.view.Bikes;
import org.measuredmile.desk.web.view.Paths;
import org.measuredmile.desk.web.view.Printing;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/// A bike: its figures, where each comes from, what was not ridden, what was done.
@Controller
class BikePages {
    private final Desk desk;
    private final Pages pages;

    BikePages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/bikes/{id}")
    ResponseEntity<String> bike(HttpServletRequest request, @PathVariable("id") String piece) {
        String id = Paths.name(piece);
        var entry = desk.archive()
                .bike(id)
                .orElseThrow(() -> new NotThere("No bike “" + id + "” is in this archive.", "/", "To the fleet"));
        var printing = new Printing(pages.visitor(request).system());
        var view = new Bikes(desk.archive(), printing, entry).view();
        return pages.show(request, new Pages.Sheet("bike", view, view.title(), Frame.Place.FLEET));
    }
}
