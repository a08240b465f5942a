package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.nio.charset.StandardCharsets;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.legal.LegalClasses;
import org.measuredmile.desk.TestedBikes;
import org.measuredmile.desk.web.view.ClassesView;
import org.measuredmile.desk.web.view.Paths;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/// A bike beside the legal classes, as a page and as a table.
@Controller
class ClassPages {
    private static final MediaType CSV = new MediaType("text", "csv", StandardCharsets.UTF_8);

    private final Desk desk;
    private final Pages pages;

    ClassPages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/bikes/{id}/classes")
    ResponseEntity<String> page(HttpServletRequest request, @PathVariable("id") String piece) {
        var bike = bike(piece);
        var page =
                new ClassesView.Page(bike.bike().title(), Paths.bike(bike.bike().id()), ClassesView.of(bike));
        return pages.show(
                request, new Pages.Sheet("classes", page, page.title() + ": legal classes", Frame.Place.FLEET));
    }

    @GetMapping("/bikes/{id}/classes.csv")
    ResponseEntity<String> table(@PathVariable("id") String piece) {
        var bike = bike(piece);
        return ResponseEntity.ok()
                .contentType(CSV)
                .body(ClassesCsv.write(bike.bike().id(), LegalClasses.of(bike)));
    }

    private TestedBike bike(String piece) {
        String id = Paths.name(piece);
        return TestedBikes.of(desk.archive(), id)
                .orElseThrow(() -> new NotThere("No bike “" + id + "” is in this archive.", "/", "To the fleet"));
    }
}
