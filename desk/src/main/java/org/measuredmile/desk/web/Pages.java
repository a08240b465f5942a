package org.measuredmile.desk.web;

import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.stereotype.Component;
import org.springframework.web.util.UriUtils;

/// Renders a page inside its frame.
@Component
class Pages {
    private static final MediaType HTML = new MediaType("text", "html", StandardCharsets.UTF_8);

    private final TemplateEngine engine;
    private final Desk desk;

    Pages(TemplateEngine engine, Desk desk) {
        this.engine = engine;
        this.desk = desk;
    }

    Visitor visitor(HttpServletRequest request) {
        return Visitor.of(request, desk.usual());
    }

    /// The page of a template.
    ResponseEntity<String> show(HttpServletRequest request, Sheet sheet) {
        return show(request, sheet, HttpStatus.OK);
    }

    /// The page of a template, under a status of its own.
    ResponseEntity<String> show(HttpServletRequest request, Sheet sheet, HttpStatusCode status) {
        var output = new StringOutput(16_384);
        engine.render(
                "page/" + sheet.template() + ".jte",
                Map.of("frame", frame(request, sheet), "page", sheet.page()),
                output);
        return ResponseEntity.status(status).contentType(HTML).body(output.toString());
    }

    /// A part of a page, for the script that refreshes it.
    ResponseEntity<String> part(String template, Object part) {
        var output = new StringOutput(2_048);
        engine.render("part/" + template + ".jte", Map.of("part", part), output);
        return ResponseEntity.ok().contentType(HTML).body(output.toString());
    }

    /// One page: which template, what it shows, under which title and place.
    record Sheet(String template, Object page, String title, Frame.Place place) {}

    private Frame frame(HttpServletRequest request, Sheet sheet) {
        String query = request.getQueryString();
        boolean isRead = request.getMethod().equals("GET");
        String path = isRead && query != null ? request.getRequestURI() + "?" + query : request.getRequestURI();
        return new Frame(sheet.title(), sheet.place(), visitor(request), path, csrf(request), desk.demo());
    }

    private static Frame.Csrf csrf(HttpServletRequest request) {
        return request.getAttribute(CsrfToken.class.getName()) instanceof CsrfToken token
                ? new Frame.Csrf(token.getParameterName(), token.getToken())
                : new Frame.Csrf("_csrf", "");
    }

    /// Sends the browser on to a page, so that loading it again repeats nothing.
    static ResponseEntity<String> onTo(String path) {
        return ResponseEntity.status(HttpStatus.SEE_OTHER)
                .location(URI.create(path))
                .build();
    }

    /// A piece of a path, made safe.
    static String piece(String text) {
        return UriUtils.encode(text, StandardCharsets.UTF_8);
    }
}
