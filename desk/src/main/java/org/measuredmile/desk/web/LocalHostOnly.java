package org.measuredmile.desk.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Set;
import org.springframework.web.filter.OncePerRequestFilter;

/// Answers only when asked for by this machine's own name, so that no page of elsewhere can reach the crew's data by
/// letting its name point here.
final class LocalHostOnly extends OncePerRequestFilter {
    private static final Set<String> NAMES = Set.of("localhost", "127.0.0.1", "[::1]", "0:0:0:0:0:0:0:1", "::1");

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (NAMES.contains(request.getServerName())) {
            chain.doFilter(request, response);
        } else {
            response.setStatus(HttpServletResponse.SC_BAD_REQUEST);
            response.setContentType("text/plain;charset=UTF-8");
            response.getWriter().write("This is a crew's own desk. Ask for it as 127.0.0.1 or localhost.\n");
        }
    }
}
