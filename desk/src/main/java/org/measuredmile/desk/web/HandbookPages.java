package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import org.measuredmile.desk.web.view.HandbookView;
import org.measuredmile.desk.web.view.Printing;
import org.measuredmile.trial.Trials;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/// The method handbook: each trial as it declares itself.
@Controller
class HandbookPages {
    private final Pages pages;

    HandbookPages(Pages pages) {
        this.pages = pages;
    }

    @GetMapping("/handbook")
    ResponseEntity<String> contents(HttpServletRequest request) {
        return pages.show(
                request, new Pages.Sheet("handbook", HandbookView.Contents.all(), "Handbook", Frame.Place.HANDBOOK));
    }

    @GetMapping("/handbook/{id}")
    ResponseEntity<String> trial(HttpServletRequest request, @PathVariable String id) {
        var trial = Trials.find(id)
                .orElseThrow(
                        () -> new NotThere("The handbook has no trial “" + id + "”.", "/handbook", "To the handbook"));
        var printing = new Printing(pages.visitor(request).system());
        var view = HandbookView.of(printing, trial.declaration());
        return pages.show(
                request,
                new Pages.Sheet("handbook-trial", view, trial.declaration().title(), Frame.Place.HANDBOOK));
    }
}
