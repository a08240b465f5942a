package org.measuredmile.trial.range;

import java.util.Arrays;

/// How a range ride ended.
enum Ending {
    ASSISTANCE_ENDED("assistance-ended", "assistance ended"),
    DISPLAY_EMPTY("display-empty", "the display says empty"),
    STOPPED_EARLY("stopped-early", "stopped early");

    private final String id;
    private final String words;

    Ending(String id, String words) {
        this.id = id;
        this.words = words;
    }

    String id() {
        return id;
    }

    String words() {
        return words;
    }

    boolean isEmptied() {
        return this != STOPPED_EARLY;
    }

    static String[] ids() {
        return Arrays.stream(values()).map(Ending::id).toArray(String[]::new);
    }

    /// The ending of a word; a ride of unknown ending gives nothing that an early stop would not give.
    static Ending of(String word) {
        return Arrays.stream(values())
                .filter(one -> one.id.equals(word))
                .findFirst()
                .orElse(STOPPED_EARLY);
    }
}
