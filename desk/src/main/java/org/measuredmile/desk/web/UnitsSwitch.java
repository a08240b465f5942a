package org.measuredmile.desk.web;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/// Turns round which system of units stands first, for this browser.
@Controller
class UnitsSwitch {
    private final Pages pages;

    UnitsSwitch(Pages pages) {
        this.pages = pages;
    }

    @PostMapping("/units")
    ResponseEntity<String> turn(HttpServletRequest request, @RequestParam(defaultValue = "/") String back) {
        var other = pages.visitor(request).system().other();
        // A path of our own, never an address of elsewhere ("//host" would be one).
        boolean isOurs = back.startsWith("/") && !back.startsWith("//") && !back.contains("\\");
        return ResponseEntity.status(HttpStatus.SEE_OTHER)
                .header(HttpHeaders.SET_COOKIE, Visitor.remember(other).toString())
                .header(HttpHeaders.LOCATION, isOurs ? back : "/")
                .build();
    }
}
