package org.measuredmile.trial.assistspeed;

import java.util.List;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Figure;

/// The cut-off speeds that were noted, and what they say of who holds a speed.
///
/// A speed within 3 % of the noted cut-off is the controller's: rider, wind and air move it by nothing. From there to
/// 6 %, and where no cut-off was noted, it may be.
/// Source: the 3 % are the climb's; the 6 % are a house value.
record CutOffs(List<Figure> figures) {
    private static final double HELD = 0.97;
    private static final double PERHAPS_HELD = 0.94;

    CutOffs {
        figures = List.copyOf(figures);
    }

    /// A speed over the noted cut-off of its drive, or of the other drive where only that was
    /// noted; NaN where none was, and with the motor off, when nothing can be cut off.
    double share(Variant variant, double speedMps) {
        if (variant.has("level", "off")) {
            return Double.NaN;
        }
        String drive = variant.get("drive").orElse("");
        return figures.stream()
                .filter(one -> one.key().variant().has("drive", drive))
                .findFirst()
                .or(() -> figures.stream().findFirst())
                .map(one -> speedMps / one.value())
                .orElse(Double.NaN);
    }

    boolean isHeld(Variant variant, double speedMps) {
        return share(variant, speedMps) >= HELD;
    }

    /// Whether a controller may hold it, for all that was noted.
    boolean mayBeHeld(Variant variant, double speedMps) {
        return !variant.has("level", "off") && !(share(variant, speedMps) < PERHAPS_HELD);
    }
}
