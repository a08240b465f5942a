package org.measuredmile.trial;

import java.util.List;
import org.measuredmile.recording.ChannelKind;

/// A recording that the trial can use, and the least it must carry.
///
/// Unit: `leastRateHz` samples a second.
public record RecordingSpec(String title, List<ChannelKind> channels, double leastRateHz, String remedy) {
    public RecordingSpec {
        channels = List.copyOf(channels);
    }
}
