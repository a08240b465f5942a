package org.measuredmile.archive;

import java.util.List;

/// What recomputing the archive found.
///
/// Shape: `differences` is empty when every kept file is what its hash says and every figure comes out as stored.
public record Recomputation(long days, long figures, long files, List<Difference> differences) {
    /// One difference.
    ///
    /// Shape: `day` names the test day or the ledger; `subject` the figure with its variant, or the file's path;
    /// `what` is the column, the JSON key or "content"; `stored` and `recomputed` are the two values, or for a file
    /// its hash and what is wrong with it.
    public record Difference(String day, String subject, String what, String stored, String recomputed) {
        /// One line for people.
        public String line() {
            return day + ": " + subject + ": " + what + ": stored " + stored + ", recomputed " + recomputed;
        }
    }

    public Recomputation {
        differences = List.copyOf(differences);
    }
}
