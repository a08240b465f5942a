package org.measuredmile.trial;

/// The questions a reader asks of a bike, in the order its page answers them.
public enum Chapter {
    GOING("Going"),
    STOPPING("Stopping"),
    CLIMBING("Climbing"),
    HOW_FAR("How far"),
    CARRYING("Lifting and carrying"),
    LIVING("Living with it");

    private final String title;

    Chapter(String title) {
        this.title = title;
    }

    public String title() {
        return title;
    }
}
