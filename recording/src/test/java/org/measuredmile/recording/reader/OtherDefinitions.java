package org.measuredmile.recording.reader;

import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.reader.SharedRecordings.Known;

/// The rows of the collection's EXPECTED.csv whose definition is not ours, each with the reason.
///
/// A row that is neither here nor compared fails [ExpectedTableTest]; docs/formats/known-values.md prints the same.
final class OtherDefinitions {
    private static final String DEVICE = "the maker's own definition, over more than the file's samples";
    private static final String NOT_IN_FILE = "stands in the data set's index of rides, not in the file";

    /// Shape: `files` and `items` are regular expressions for the whole of each.
    record Other(String files, String items, String by, String reason) {
        boolean covers(Known known) {
            return known.file().matches(files)
                    && known.item().matches(items)
                    && known.by().startsWith(by);
        }
    }

    static final List<Other> ALL = List.of(
            new Other(
                    "gpx/.*", "length, [23]-D", "gpxpy", "planes on a sphere, in 3-D with heights; ours is geodesics"),
            new Other(
                    "gpx/.*", "(moving|stopped) time", "gpxpy", "steps over 1 km/h; ours are over 0.5 m/s and no gaps"),
            new Other("gpx/.*", "largest speed", "gpxpy", "after leaving out the fastest 5 %; ours leaves out nothing"),
            new Other("gpx/.*", "(as|des)cent", "gpxpy", "sums of smoothed steps; ours has a hysteresis"),
            new Other(
                    "gpx/all_zero_coordinates_hr_only.gpx",
                    "repeated positions",
                    "own count",
                    "of positions at 0, 0, which are left out"),
            new Other(
                    "nmea/subsecond_mixed_epochs_crlf.nmea",
                    "first / last time, RMC",
                    "own NMEA",
                    "the last line of the file; ours is the latest"),
            new Other(
                    "tcx/.*",
                    "(time|distance), device",
                    "device",
                    "sums of lap totals, from which nothing is computed"),
            new Other(
                    "tcx/coordinates_zero_and_not_numbers.tcx",
                    "path length",
                    "pyproj",
                    "one step from 0, 0, which is no place but a receiver without a fix"),
            new Other(
                    "fit/.*", "(part file 1: part . .*)?(elapsed time|distance|mean speed), device", "device", DEVICE),
            new Other("fit/.*", "(part file 1: part . .*)?((as|des)cent|mean power), device", "device", DEVICE),
            new Other("fit/.*", "part file 1: part . .*(timer time|largest speed), device", "device", DEVICE),
            new Other("csv-ebike/.*", "duration", "authors", "counts recorded seconds; ours is from first to last"),
            new Other("csv-ebike/escooter.*", "distance", "authors", "not stated; the file has positions only"),
            new Other("csv-ebike/.*", "mean speed", "authors", "the device's, its definition not stated"),
            new Other("csv-ebike/.*", "ascent", "authors", "the device's, its definition not stated"),
            new Other("csv-ebike/.*", "pack voltage at (start|end)", "authors", NOT_IN_FILE),
            new Other("csv-ebike/.*", "energy used|consumption", "authors", NOT_IN_FILE),
            new Other("csv-ebike/.*", "wind speed|air temperature", "authors", NOT_IN_FILE),
            new Other(
                    "csv-ev/.*",
                    "route length and mean time",
                    "authors",
                    "of the whole set of drives, not of the file"),
            new Other(
                    "csv-power/.*",
                    "number of rides in the whole set",
                    "authors",
                    "of four files, of which this is one"),
            new Other(
                    "csv-power/.*",
                    "coasting run on flat road",
                    "own scan",
                    "asks for the slope, which is kept as told"));

    private OtherDefinitions() {}

    /// Why a row is not compared; empty for one that is.
    static Optional<String> reason(Known known) {
        return ALL.stream()
                .filter(other -> other.covers(known))
                .map(Other::reason)
                .findFirst();
    }
}
