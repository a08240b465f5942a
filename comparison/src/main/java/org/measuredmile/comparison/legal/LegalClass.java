package org.measuredmile.comparison.legal;

import java.util.List;

/// A class of bike as one text draws it.
///
/// Shape: `date` is that of the text that was compared, as far as it is known (`2025-01-01`, `2017`, empty); `until` is
/// when it went out of force, empty while it stands. `labels` are what a bike's own marks call the class, lower case.
public record LegalClass(
        String id,
        String jurisdiction,
        String title,
        Basis basis,
        String section,
        String date,
        String until,
        Known known,
        String source,
        String note,
        List<String> labels,
        List<LegalRule> rules) {
    public LegalClass {
        labels = List.copyOf(labels);
        rules = List.copyOf(rules);
    }

    /// What kind of text it is: a law's limit and a product standard's tolerance are never one verdict.
    public enum Basis {
        LAW("law"),
        STANDARD("product standard");

        private final String words;

        Basis(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /// How we know what the text says.
    public enum Known {
        READ("read"),
        SUMMARY("from a summary of it"),
        MEMORY("from memory, not looked up");

        private final String words;

        Known(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /// Whether it stands today, as far as we know.
    public boolean isInForce() {
        return until.isEmpty();
    }

    /// All that makes it less than sure, in words to be shown with it; empty where nothing does.
    public String caveat() {
        String how = known == Known.READ ? "" : "Known " + known.words() + ".";
        return (how + " " + note).strip();
    }
}
