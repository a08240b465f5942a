package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.measuredmile.desk.web.view.HistoryView;
import org.measuredmile.desk.web.view.Reductions;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;

/// Everything that was done to the archive.
@Controller
class HistoryPages {
    private static final int MOST = 500;

    private final Desk desk;
    private final Pages pages;

    HistoryPages(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/history")
    ResponseEntity<String> history(HttpServletRequest request) {
        var all = desk.archive().history();
        var view = HistoryView.of(all.subList(Math.max(0, all.size() - MOST), all.size()), zone());
        return pages.show(request, new Pages.Sheet("history", view, "History", Frame.Place.HISTORY));
    }

    /// The zone of the latest test day, for that is where the crew is.
    private ZoneId zone() {
        return desk.archive().days().stream()
                .findFirst()
                .flatMap(day -> Reductions.of(desk.archive(), day.id()))
                .map(reduced -> reduced.day().timeZone())
                .orElse(ZoneOffset.UTC);
    }
}
