package org.measuredmile.desk.web.view;

import java.util.Arrays;
import java.util.List;

/// The pages of a bike, in the order of their tabs: one constant a page that is there.
public enum BikeTab {
    FIGURES("Figures", ""),
    SPEC("Spec sheet", "/spec"),
    CLAIMS("Claims", "/claims"),
    CLASSES("Legal classes", "/classes"),
    SENTENCES("Sentences", "/sentences");

    private final String words;
    private final String below;

    BikeTab(String words, String below) {
        this.words = words;
        this.below = below;
    }

    /// A tab of one bike's pages.
    public record Link(String words, String href, boolean isCurrent) {}

    /// The tabs below the address of a bike's page, this one current.
    public List<Link> under(String bikeHref) {
        return Arrays.stream(values())
                .map(tab -> new Link(tab.words, bikeHref + tab.below, tab == this))
                .toList();
    }

    /// The tabs of a bike, this one current.
    public List<Link> of(String bike) {
        return under(Paths.bike(bike));
    }
}
