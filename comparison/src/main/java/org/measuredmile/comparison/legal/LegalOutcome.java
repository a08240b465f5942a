package org.measuredmile.comparison.legal;

/// What the data say about a class or one of its rules.
///
/// Shape: can't tell and not measured are neither a pass nor a fail and are never worded as one.
public enum LegalOutcome {
    WITHIN("within"),
    OUTSIDE("outside"),
    CANNOT_TELL("cannot-tell"),
    NOT_MEASURED("not-measured");

    private final String id;

    LegalOutcome(String id) {
        this.id = id;
    }

    /// Its name in JSON and CSV.
    public String id() {
        return id;
    }
}
