package org.measuredmile.desk.web;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import org.measuredmile.desk.web.view.TroubleView;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.multipart.MaxUploadSizeExceededException;
import org.springframework.web.multipart.MultipartException;

/// The pages for what goes wrong: what, where, what is kept, what next.
@Controller
@ControllerAdvice
class Troubles implements ErrorController {
    private static final Logger LOG = LoggerFactory.getLogger(Troubles.class);
    private static final String NOTHING_CHANGED = "Nothing was changed; all that was kept before is still there.";

    private final Pages pages;

    Troubles(Pages pages) {
        this.pages = pages;
    }

    @ExceptionHandler(NotThere.class)
    ResponseEntity<String> notThere(HttpServletRequest request, NotThere what) {
        var view = new TroubleView(
                "Not there",
                what.getMessage() == null ? "" : what.getMessage(),
                request.getRequestURI(),
                "",
                "It may have been written another way.",
                what.next(),
                what.nextWords());
        return show(request, view, HttpStatus.NOT_FOUND);
    }

    @ExceptionHandler(MaxUploadSizeExceededException.class)
    ResponseEntity<String> tooLarge(HttpServletRequest request, MaxUploadSizeExceededException trouble) {
        var view = new TroubleView(
                "Too large",
                "A file may have 512 MB, all files sent at once 2 GB. This was more.",
                request.getRequestURI(),
                "None of these files was kept; the day is as it was.",
                "Send fewer files at a time, or cut the recording where it holds no run.",
                before(request),
                "Back to the day");
        return show(request, view, HttpStatus.CONTENT_TOO_LARGE);
    }

    @ExceptionHandler(MultipartException.class)
    ResponseEntity<String> brokenUpload(HttpServletRequest request, MultipartException trouble) {
        var view = new TroubleView(
                "Stopped half-way",
                "The upload ended before the last file was whole.",
                request.getRequestURI(),
                "None of these files was kept; the day is as it was.",
                "Send them again.",
                before(request),
                "Back to the day");
        return show(request, view, HttpStatus.BAD_REQUEST);
    }

    @RequestMapping("/error")
    ResponseEntity<String> anything(HttpServletRequest request) {
        int status = request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE) instanceof Integer code ? code : 404;
        Object asked = request.getAttribute(RequestDispatcher.ERROR_REQUEST_URI);
        String where = asked instanceof String path ? path : request.getRequestURI();
        return switch (status) {
            case 403 -> show(request, forbidden(where), HttpStatus.FORBIDDEN);
            case 404 -> show(request, unknown(where), HttpStatus.NOT_FOUND);
            case 400, 405, 406, 415 -> show(request, notUnderstood(where), HttpStatus.valueOf(status));
            default -> {
                if (request.getAttribute(RequestDispatcher.ERROR_EXCEPTION) instanceof Throwable cause) {
                    LOG.error("{}: {}", where, cause.toString(), cause);
                }
                yield show(request, ours(where), HttpStatus.INTERNAL_SERVER_ERROR);
            }
        };
    }

    private static TroubleView forbidden(String where) {
        return new TroubleView(
                "Not taken",
                "The form came without the token that every form of ours carries.",
                where,
                NOTHING_CHANGED + " What you typed is still in the form, one step back.",
                "Go back, load the page again, and send it once more. Cookies of this page must be allowed.",
                "/",
                "To the fleet");
    }

    private static TroubleView unknown(String where) {
        return new TroubleView(
                "Not there",
                "There is no page of this name.",
                where,
                "",
                "Start from one of the places above.",
                "/",
                "To the fleet");
    }

    private static TroubleView notUnderstood(String where) {
        return new TroubleView(
                "Not understood",
                "What was asked for does not fit this page.",
                where,
                NOTHING_CHANGED,
                "Go back and use the form as it stands there.",
                "/",
                "To the fleet");
    }

    private static TroubleView ours(String where) {
        return new TroubleView(
                "Our fault",
                "This page met something its makers had not thought of.",
                where,
                "Every file and reading kept before this moment is kept.",
                "Load the page again. If it comes back, the program's log says what happened.",
                "/",
                "To the fleet");
    }

    private static String before(HttpServletRequest request) {
        String path = request.getRequestURI();
        int last = path.lastIndexOf('/');
        return last > 0 ? path.substring(0, last) : "/";
    }

    private ResponseEntity<String> show(HttpServletRequest request, TroubleView view, HttpStatus status) {
        return pages.show(request, new Pages.Sheet("trouble", view, view.kind(), Frame.Place.FLEET), status);
    }
}
