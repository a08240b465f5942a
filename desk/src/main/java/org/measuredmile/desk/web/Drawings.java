package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.util.Base64;
import org.measuredmile.desk.web.view.FileDrawing;
import org.measuredmile.desk.web.view.Paths;
import org.measuredmile.desk.web.view.Printing;
import org.measuredmile.desk.web.view.Reductions;
import org.measuredmile.publication.chart.AloneStyle;
import org.measuredmile.quantity.UnitSystem;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/// The drawings of a day's files, each by its own address, so that a page need not wait for them.
///
/// Shape: the address names the day's revision and the units, so a browser may keep what it got for good.
@Controller
class Drawings {
    private static final MediaType SVG = new MediaType("image", "svg+xml", StandardCharsets.UTF_8);
    private static final String POLICY = "default-src 'none'; frame-ancestors 'none'; style-src '" + styleHash() + "'";

    private final Desk desk;
    private final Pages pages;

    Drawings(Desk desk, Pages pages) {
        this.desk = desk;
        this.pages = pages;
    }

    /// What a drawing of a curve may be asked for: size in pixels, stretch in seconds, links or none.
    record Asked(double w, double h, double from, double to, boolean links) {
        /// Within what a page can show; the whole recording where no stretch is named.
        FileDrawing.View within(double spanS) {
            double first = Double.isFinite(from) ? Math.clamp(from, 0, spanS) : 0;
            double last = Double.isFinite(to) && to > 0 ? Math.clamp(to, 0, spanS) : spanS;
            boolean isStretch = last - first >= 0.005;
            return new FileDrawing.View(
                    Math.clamp(Double.isFinite(w) ? w : 760, 280, 2400),
                    Math.clamp(Double.isFinite(h) ? h : 80, 40, 600),
                    isStretch ? first : 0,
                    isStretch ? last : spanS,
                    !links);
        }
    }

    @GetMapping("/days/{day}/files/{file}/trace.svg")
    ResponseEntity<String> trace(
            HttpServletRequest request,
            @PathVariable String day,
            @PathVariable String file,
            @RequestParam(defaultValue = "760") double w,
            @RequestParam(defaultValue = "80") double h,
            @RequestParam(defaultValue = "0") double from,
            @RequestParam(defaultValue = "0") double to,
            @RequestParam(defaultValue = "false") boolean links) {
        var drawing = drawing(request, Paths.name(day), Paths.name(file));
        var view = new Asked(w, h, from, to, links).within(drawing.spanS());
        String svg = drawing.trace(view)
                .orElseThrow(() -> new NotThere("Nothing in this file can be drawn.", Paths.day(day), "To the day"));
        return picture(request, Paths.name(day), svg);
    }

    @GetMapping("/days/{day}/files/{file}/track.svg")
    ResponseEntity<String> track(
            HttpServletRequest request,
            @PathVariable String day,
            @PathVariable String file,
            @RequestParam(defaultValue = "240") double w,
            @RequestParam(defaultValue = "200") double h) {
        String svg = drawing(request, Paths.name(day), Paths.name(file))
                .track(Math.clamp(w, 160, 1600), Math.clamp(h, 120, 1600))
                .orElseThrow(() -> new NotThere("This file holds no positions.", Paths.day(day), "To the day"));
        return picture(request, Paths.name(day), svg);
    }

    private FileDrawing drawing(HttpServletRequest request, String day, String file) {
        var printing = new Printing(system(request));
        return Reductions.of(desk.archive(), day)
                .flatMap(reduced -> FileDrawing.of(new FileDrawing.Of(printing, day, reduced), file))
                .orElseThrow(() -> new NotThere("No such file was read.", "/days", "To the days"));
    }

    private UnitSystem system(HttpServletRequest request) {
        String asked = request.getParameter("u");
        return asked == null
                ? pages.visitor(request).system()
                : asked.equals("metric") ? UnitSystem.METRIC : UnitSystem.IMPERIAL;
    }

    private ResponseEntity<String> picture(HttpServletRequest request, String day, String svg) {
        String revision = desk.archive()
                .day(day)
                .map(stored -> Long.toString(stored.revision().number()))
                .orElse("");
        boolean isOfNow = revision.equals(request.getParameter("v")) && request.getParameter("u") != null;
        return ResponseEntity.ok()
                .contentType(SVG)
                .header("Content-Security-Policy", POLICY)
                .cacheControl(
                        isOfNow
                                ? CacheControl.maxAge(Duration.ofDays(365))
                                        .cachePrivate()
                                        .immutable()
                                : CacheControl.noStore())
                .body(svg);
    }

    private static String styleHash() {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(AloneStyle.CSS.getBytes(StandardCharsets.UTF_8));
            return "sha256-" + Base64.getEncoder().encodeToString(hash);
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java has SHA-256", missing);
        }
    }
}
