package org.measuredmile.desk.web;

import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import java.util.Arrays;
import java.util.Optional;
import org.measuredmile.desk.web.edit.CrewCode;
import org.measuredmile.quantity.UnitSystem;
import org.springframework.http.ResponseCookie;

/// Who is at the page: a crew code and the system that stands first, both kept in cookies and nowhere else.
///
/// Shape: `who` is empty until somebody wrote their code. It is a signature, no proof of who somebody is.
public record Visitor(String who, UnitSystem system) {
    private static final String WHO = "who";
    private static final String UNITS = "units";

    static Visitor of(HttpServletRequest request, UnitSystem usual) {
        String who = cookie(request, WHO).filter(CrewCode::isOne).orElse("");
        UnitSystem system = cookie(request, UNITS)
                .map(text -> text.equals("metric") ? UnitSystem.METRIC : UnitSystem.IMPERIAL)
                .orElse(usual);
        return new Visitor(who, system);
    }

    static ResponseCookie remember(String who) {
        return cookie(WHO, who);
    }

    static ResponseCookie remember(UnitSystem system) {
        return cookie(UNITS, system == UnitSystem.METRIC ? "metric" : "imperial");
    }

    private static ResponseCookie cookie(String name, String value) {
        return ResponseCookie.from(name, value)
                .path("/")
                .httpOnly(true)
                .sameSite("Strict")
                .maxAge(java.time.Duration.ofDays(365))
                .build();
    }

    private static Optional<String> cookie(HttpServletRequest request, String name) {
        Cookie[] cookies = request.getCookies();
        return cookies == null
                ? Optional.empty()
                : Arrays.stream(cookies)
                        .filter(one -> one.getName().equals(name))
                        .map(Cookie::getValue)
                        .findFirst();
    }
}
