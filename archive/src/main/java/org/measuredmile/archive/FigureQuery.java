package org.measuredmile.archive;

import org.measuredmile.recording.day.Variant;

/// Which figures are asked for. Empty text asks for any.
///
/// Shape: `variant` must be covered by a figure's own. With `latest`, of the figures of a bike in one configuration and
/// one variant only the one of the latest day stands (of one date, the day whose id sorts last); with `accepted`, only
/// figures all of whose runs were confirmed. Figures of a trial version other than the current one are never given.
public record FigureQuery(String figure, String bike, String day, Variant variant, boolean latest, boolean accepted) {
    /// Every figure, the latest of each bike, configuration and variant, confirmed or not.
    public static final FigureQuery LATEST = new FigureQuery("", "", "", Variant.NONE, true, false);

    /// The latest accepted figures of an id: what a standing is made of.
    public static FigureQuery standing(String figure) {
        return new FigureQuery(figure, "", "", Variant.NONE, true, true);
    }

    /// The latest figures of a bike.
    public static FigureQuery ofBike(String bike) {
        return new FigureQuery("", bike, "", Variant.NONE, true, false);
    }

    /// Every figure of a test day.
    public static FigureQuery ofDay(String day) {
        return new FigureQuery("", "", day, Variant.NONE, false, false);
    }

    public FigureQuery covering(Variant wanted) {
        return new FigureQuery(figure, bike, day, wanted, latest, accepted);
    }

    /// The same, of every day instead of the latest.
    public FigureQuery ofEveryDay() {
        return new FigureQuery(figure, bike, day, variant, false, accepted);
    }
}
