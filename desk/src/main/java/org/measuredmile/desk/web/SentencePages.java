package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import org.measuredmile.desk.SentenceBook;
import org.measuredmile.desk.SentenceChanges;
import org.measuredmile.desk.web.edit.CrewCode;
import org.measuredmile.desk.web.view.ChangedSentencesView;
import org.measuredmile.desk.web.view.Paths;
import org.measuredmile.desk.web.view.SentencesView;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/// What can be said of a bike, to be copied; and which sentences say something else since an editor last looked.
@Controller
class SentencePages {
    private final Desk desk;
    private final Pages pages;
    private final SentenceBook book;
    private final SentenceChanges changes;

    SentencePages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
        book = new SentenceBook(desk.archive());
        changes = new SentenceChanges(desk.archive(), book);
    }

    @GetMapping("/bikes/{id}/sentences")
    ResponseEntity<String> bike(
            HttpServletRequest request,
            @PathVariable("id") String piece,
            @RequestParam(name = "chapter", defaultValue = "") String chapter,
            @RequestParam(name = "words", defaultValue = "") String words) {
        String id = Paths.name(piece);
        var entry = desk.archive()
                .bike(id)
                .orElseThrow(() -> new NotThere("No bike “" + id + "” is in this archive.", "/", "To the fleet"));
        var wish = new SentencesView.Wish(chapter, words);
        var view = SentencesView.of(
                entry,
                book.of(id).orElseThrow(() -> new NotThere("No bike “" + id + "” is described.", "/", "To the fleet")),
                wish,
                pages.visitor(request).system());
        return pages.show(
                request, new Pages.Sheet("sentences", view, "What can be said: " + view.title(), Frame.Place.FLEET));
    }

    @GetMapping("/sentences/changed")
    ResponseEntity<String> changed(
            HttpServletRequest request, @RequestParam(name = "bike", defaultValue = "") String bike) {
        return changed(request, bike, "", HttpStatus.OK);
    }

    @PostMapping("/sentences/changed")
    ResponseEntity<String> seen(
            HttpServletRequest request,
            @RequestParam(name = "bike", defaultValue = "") String bike,
            @RequestParam(name = "who", defaultValue = "") String who) {
        if (!CrewCode.isOne(who.strip())) {
            return changed(request, bike, "Give your code, as T1.", HttpStatus.UNPROCESSABLE_CONTENT);
        }
        changes.see(bike, who.strip());
        return Pages.onTo("/sentences/changed" + (bike.isEmpty() ? "" : "?bike=" + Pages.piece(bike)));
    }

    private ResponseEntity<String> changed(HttpServletRequest request, String bike, String fault, HttpStatus status) {
        var visitor = pages.visitor(request);
        var view = ChangedSentencesView.of(
                bike, changes.of(bike), changes.lastSeen(bike), fault, visitor.who(), visitor.system());
        return pages.show(
                request, new Pages.Sheet("sentences-changed", view, "Changed sentences", Frame.Place.HISTORY), status);
    }
}
