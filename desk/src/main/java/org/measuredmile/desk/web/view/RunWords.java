package org.measuredmile.desk.web.view;

import org.measuredmile.recording.day.Run;

/// How a run's state is told: proposed, confirmed or void as written, and valid when it is confirmed and counts.
final class RunWords {
    private RunWords() {}

    static String state(Run.State state, boolean counted) {
        return switch (state) {
            case VOID -> "void";
            case PROPOSED -> counted ? "proposed" : "proposed, not counted";
            case CONFIRMED -> counted ? "valid" : "not counted";
        };
    }

    static String mark(Run.State state, boolean counted) {
        return switch (state) {
            case VOID -> "void";
            case PROPOSED -> "noted";
            case CONFIRMED -> counted ? "valid" : "void";
        };
    }

    /// A reason as a sentence's end, without the state word the reducer put before it.
    static String reason(String reason) {
        return reason.startsWith("void: ") ? reason.substring("void: ".length()) : reason;
    }
}
