package org.measuredmile.recording;

/// Something that an instrument or a person marked on a recording's time base: a lap, a pause, a press of a button, a
/// line of a caption.
///
/// Unit: seconds from the recording's start, `fromS <= toS`; equal where the mark is an instant. `text` is what the
/// file said of it, or empty.
public record Mark(Kind kind, double fromS, double toS, String text) {
    /// What a mark says.
    public enum Kind {
        /// A lap, from its beginning to its end.
        LAP,
        /// The instrument was stopped, by hand or by itself.
        PAUSE,
        /// A button was pressed, or a place was named.
        POINT,
        /// Words spoken, as a caption has them.
        CAPTION
    }
}
