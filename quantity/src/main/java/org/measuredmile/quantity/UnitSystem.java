package org.measuredmile.quantity;

/// One of the two systems that results are shown in; the crew's own stands first, the other beside it.
public enum UnitSystem {
    METRIC,
    IMPERIAL;

    /// The other one.
    public UnitSystem other() {
        return this == METRIC ? IMPERIAL : METRIC;
    }
}
