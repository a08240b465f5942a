package org.measuredmile.recording.spoken;

/// What a speed trace has around the moment that somebody spoke of.
///
/// Unit: seconds; `uncertaintyS` is the standard uncertainty of that moment.
record TraceWindow(TraceTable trace, double offsetS, double uncertaintyS) {
    private static final double REACH = 2;

    /// The trace at the moment and its least and most around it; NaN where it has nothing.
    record Near(double timeS, double mps, double leastMps, double mostMps) {
        private static final double AGREE = 2.5;

        boolean isKnown() {
            return !Double.isNaN(mps);
        }

        boolean agreesWith(double saidMps, double sigmaMps) {
            return isKnown() && saidMps >= leastMps - AGREE * sigmaMps && saidMps <= mostMps + AGREE * sigmaMps;
        }
    }

    /// Around the moment that a speed was on the display which was said at a time of the clip.
    Near near(double saidS) {
        double seenS = saidS + offsetS - SpeechLag.MEAN_S;
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (double at = seenS - REACH * uncertaintyS; at <= seenS + REACH * uncertaintyS; at += TraceTable.STEP_S) {
            double mps = trace.at(at);
            if (!Double.isNaN(mps)) {
                least = Math.min(least, mps);
                most = Math.max(most, mps);
            }
        }
        return new Near(seenS, trace.at(seenS), least, most);
    }
}
