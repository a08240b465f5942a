package org.measuredmile.demo;

/// What goes differently on a day, as it does in life.
enum Twist {
    NONE,
    /// Nobody switched a receiver on: all of it is typed.
    TYPED_ONLY,
    /// The recording was made and its card could not be read.
    RECORDING_LOST,
    /// Only a handlebar computer ran, once a second, and nobody had a tape.
    ONE_HERTZ,
    /// Nobody wrote the wind down.
    NO_WIND,
    /// The runs were found by the tool and nobody has confirmed them.
    PROPOSED,
    /// One stop was in somebody's way.
    RUN_VOID,
    /// A camera rode along, and its clip's words were written down.
    FILMED;

    /// Whether a fast receiver stood by for its display.
    boolean isRecorded() {
        return this != TYPED_ONLY && this != ONE_HERTZ;
    }
}
