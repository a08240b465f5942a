package org.measuredmile.comparison.expected;

import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.FigureSpec;

/// One expected-value line: which figure, against what.
///
/// Shape: the result of a bike is its latest accepted one whose variant covers `variant`, at reference only
/// where that says so; where bikes differ in a key that it leaves open (two hills), those stand on the line
/// that are most alike. `bend` says in what of `across` the line is straight; `why` in half a sentence what
/// is to be expected.
public record ExpectedLine(
        String id, String title, Coordinate across, Bend bend, FigureSpec figure, Variant variant, String why) {
    /// In what the line is straight.
    public enum Bend {
        /// In the quantity itself.
        STRAIGHT("a straight line"),
        /// In one over the quantity, as the time of a hill is in the power per mass.
        INVERSE("a line that is straight in one over it");

        private final String words;

        Bend(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }

        double straightened(double across) {
            return this == STRAIGHT ? across : 1 / across;
        }

        /// How fast the straightened quantity changes with the quantity itself.
        double rate(double across) {
            return this == STRAIGHT ? 1 : -1 / (across * across);
        }
    }
}
