package org.measuredmile.recording.spoken;

import java.util.List;
import org.measuredmile.quantity.Interval;
import org.measuredmile.recording.motion.SpeedSource;

/// By how much a clip's clock differs from a recording's, found by the speeds that were said in the one and measured
/// in the other.
///
/// Unit: seconds to add to a time of the clip to get the time on the recording's own time base.
public sealed interface CameraOffset {
    /// One offset fits and no other does.
    ///
    /// Shape: `agreeing` of `said` speeds agree with the trace at that offset.
    record Found(double offsetS, double standardUncertaintyS, Interval interval95S, int agreeing, int said)
            implements CameraOffset {}

    /// No offset is given, and why.
    ///
    /// Shape: `code` as a finding's; `offsetsS` are the best that fit, where several do.
    record NotFound(String code, String message, String remedy, List<Double> offsetsS) implements CameraOffset {
        public NotFound {
            offsetsS = List.copyOf(offsetsS);
        }
    }

    /// The offset between the clip in which these were said and the recording that the speed is of.
    ///
    /// Numbers said without a unit count, at less weight, in the unit of the last speed said before them.
    static CameraOffset of(List<SpokenReading> said, SpeedSource speed) {
        return new OffsetSearch(SaidSpeed.of(said), speed).find();
    }
}
