package org.measuredmile.recording.day;

import java.util.List;
import org.measuredmile.recording.Finding;

/// What came of reading a test day's own files.
public sealed interface DayRead {
    /// A test day that can be worked on; lines that could not be used stand in the findings and are left out of it.
    record Read(TestDay day, Bike bike, List<Finding> findings) implements DayRead {
        public Read {
            findings = List.copyOf(findings);
        }
    }

    /// No test day: without date or bike there is nothing to hang a figure on. All faults of all its files are
    /// named.
    record Unusable(String name, List<Finding> findings) implements DayRead {
        public Unusable {
            findings = List.copyOf(findings);
        }
    }
}
