package org.measuredmile.comparison.spec;

import java.util.List;
import java.util.Optional;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.SpecLine;

/// One line of the spec sheet, with its status and why it has it.
///
/// Shape: `line` is what is written in spec.csv, or what the bike's own marks added to it; `claim` is absent for words
/// and where nothing is claimed; `derived` tells what follows from the line by arithmetic, empty for nothing.
public record SpecEntry(
        SpecItem item,
        SpecLine line,
        Optional<ClaimText> claim,
        Optional<TestedBike.Result> measured,
        Status status,
        String why,
        String derived,
        List<Finding> findings) {
    /// What is known of a line, worked out and never written.
    public enum Status {
        /// A figure of any day leaves the claim out in the direction that matters, or the bike itself says
        /// otherwise.
        CONTRADICTED("contradicted"),
        /// A figure measures it and does not contradict it.
        MEASURED("measured"),
        /// The bike itself says so, or says it where nothing is claimed.
        SEEN("seen"),
        /// The maker says so, and no trial and no mark speaks of it.
        CLAIMED("claimed"),
        /// A trial or a mark could tell, and nobody has looked.
        NOT_CHECKED("not checked");

        private final String words;

        Status(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }

        /// Its name in JSON: lower case with hyphens.
        public String id() {
            return words.replace(' ', '-');
        }
    }

    public SpecEntry {
        findings = List.copyOf(findings);
    }

    /// What is claimed, as printed.
    public String claimed() {
        return ClaimText.words(line);
    }

    public boolean isClaimed() {
        return !line.claimed().isBlank();
    }

    public boolean isSeen() {
        return !line.seen().isBlank();
    }
}
