package org.measuredmile.desk.web;

import java.util.List;
import org.measuredmile.quantity.UnitSystem;

/// What stands around every page: its title, the place it belongs to, who is writing, which units stand first.
///
/// Shape: `path` is where the units switch leads back to; `csrf` the token that every form carries; `demo` says that
/// all data are invented.
public record Frame(String title, Place place, Visitor visitor, String path, Csrf csrf, boolean demo) {
    /// The places of the masthead, in their order.
    public enum Place {
        FLEET("Fleet", "/"),
        DAYS("Test days", "/days"),
        STANDINGS("Standings", "/standings"),
        SIDE_BY_SIDE("Side by side", "/side-by-side"),
        HANDBOOK("Handbook", "/handbook"),
        HISTORY("History", "/history");

        private final String words;
        private final String href;

        Place(String words, String href) {
            this.words = words;
            this.href = href;
        }

        public String words() {
            return words;
        }

        public String href() {
            return href;
        }
    }

    /// The hidden field that proves a form came from our own page.
    public record Csrf(String name, String token) {}

    public List<Place> places() {
        return List.of(Place.values());
    }

    public UnitSystem system() {
        return visitor.system();
    }

    /// What the switch of units says now.
    public String unitsWords() {
        return switch (system()) {
            case IMPERIAL -> "mph, ft, lb first";
            case METRIC -> "km/h, m, kg first";
        };
    }
}
