package org.measuredmile.desk.web.view;

/// What went wrong, where, what is kept, and what to do next.
public record TroubleView(
        String kind, String what, String where, String kept, String next, String nextHref, String nextWords) {}
