package org.measuredmile.demo.ride;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;

/// A simulated test day as a crew would hand it in, and beside it the truth.
///
/// Shape: `recordings` are the instruments' files by name.
public record SimulatedDay(TestDay day, Bike bike, SortedMap<String, byte[]> recordings, List<Truth> truths) {
    public SimulatedDay {
        recordings = Collections.unmodifiableSortedMap(new TreeMap<>(recordings));
        truths = List.copyOf(truths);
    }

    /// What a figure should have been.
    ///
    /// Shape: `thisDay` is the mean of endless runs on that day, on level road from exactly the nominal
    /// conditions; `anyDay` that of endless days. The standard deviations about either are the best
    /// possible: those of an ideal analyst who has the same records (instruments as good as the
    /// population draws them, with what the day file states of them) and the same knowledge of bike,
    /// road and weather (what is written, else what is usual), knows exactly how runs and days scatter,
    /// and uses all of it by likelihood. Of the figure itself nothing is known beforehand. They come
    /// from formulas of this package, never from those of a trial.
    /// Unit: the SI unit of the figure.
    public record Truth(
            String figure, Variant variant, double thisDay, double anyDay, double sdThisDay, double sdAnyDay) {}
}
