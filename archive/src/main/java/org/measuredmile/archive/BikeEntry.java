package org.measuredmile.archive;

import java.util.List;

/// A bike on a list, as its latest test day describes it.
///
/// Shape: `days` are the ids of its test days, latest first.
public record BikeEntry(String id, String maker, String model, String category, String drive, List<String> days) {
    public BikeEntry {
        days = List.copyOf(days);
    }

    /// Maker and model, or the id when neither is known.
    public String title() {
        String title = (maker + " " + model).strip();
        return title.isEmpty() ? id : title;
    }
}
