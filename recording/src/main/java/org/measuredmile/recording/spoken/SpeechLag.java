package org.measuredmile.recording.spoken;

/// How long after a speed stood on the bike's display it is said.
///
/// Unit: seconds. The mean is that of a person who reads a display and speaks, and of the display's own smoothing;
/// `COMMON_S` is how far one person and display differ from it throughout a clip, `EACH_S` how far one remark differs
/// from the next.
/// Source: house values, no published source.
final class SpeechLag {
    static final double MEAN_S = 1.2;
    static final double COMMON_S = 0.5;
    static final double EACH_S = 0.4;

    private SpeechLag() {}
}
