package org.measuredmile.archive;

/// Who does something to the archive, and why; when, the archive's clock says.
///
/// Shape: `who` is a crew member's code or the name of a part of the program.
public record Act(String who, String why) {
    public Act {
        if (who.isBlank()) {
            throw new IllegalArgumentException("an act needs somebody who does it");
        }
    }
}
