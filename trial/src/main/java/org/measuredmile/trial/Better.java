package org.measuredmile.trial;

/// Which way is better for a rider.
public enum Better {
    LESS,
    MORE,
    /// Neither end is better (a cut-off speed).
    NEITHER
}
