package org.measuredmile.archive;

import java.time.Instant;
import java.time.LocalDate;

/// A reply sheet that was sent to a bike's maker.
///
/// Shape: `number` counts the sheets sent for the bike from 1; `sha256` is that of the sheet's text as it was
/// sent.
public record SentReply(
        String bike, long number, LocalDate sent, LocalDate due, String who, Instant recordedAt, String sha256) {
    /// What is to be kept: the sheet's text, when it was sent and when an answer is due.
    ///
    /// Error: IllegalArgumentException when the answer is due before the sheet was sent.
    public record Sheet(String bike, String text, LocalDate sent, LocalDate due) {
        public Sheet {
            if (due.isBefore(sent)) {
                throw new IllegalArgumentException("due " + due + " is before sent " + sent);
            }
        }
    }
}
