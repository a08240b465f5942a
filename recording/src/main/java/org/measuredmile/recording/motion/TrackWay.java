package org.measuredmile.recording.motion;

import java.util.Optional;
import org.measuredmile.recording.Recording;

/// How far a track went, with nothing from standing about and little from noise of the fixes.
///
/// Steps are geodesics on WGS-84 from one fix to the next that lies at least [#LEAST_STEP_M] from it: noise of fixes a
/// tenth of a second apart would otherwise lengthen every metre. While the bike stands no step is taken. No step leaves
/// the recording's segment.
/// Unit: metres. `unfilteredM` sums every step, for comparison; `standing` says when it stood and how that was decided.
/// Valid: bends of 10 m radius are cut by about 1 % of their length. Speed integrated over time is better where it
/// exists.
/// Source: geodesics by Karney, Journal of Geodesy 87 (2013) 43–55; the least step is a house value.
public record TrackWay(double wayM, double unfilteredM, Standing standing) {
    private static final double LEAST_STEP_M = 5;

    public static Optional<TrackWay> of(Recording recording) {
        return Fixes.of(recording).map(fixes -> of(recording, fixes.withoutRepeats()));
    }

    private static TrackWay of(Recording recording, Fixes fixes) {
        var standing = Standing.of(recording);
        double wayM = 0;
        double unfilteredM = 0;
        int anchor = -1;
        int last = -1;
        int segment = 0;
        for (int i = 0; i < fixes.size(); i++) {
            double timeS = fixes.timesS()[i];
            boolean isNew = false;
            while (segment < recording.segments().size()
                    && recording.segments().get(segment).toS() < timeS) {
                segment++;
                isNew = true;
            }
            if (isNew || last < 0) {
                wayM += anchor >= 0 && last > anchor && !standing.at(fixes.timesS()[last])
                        ? fixes.metres(anchor, last)
                        : 0;
                anchor = i;
            } else {
                unfilteredM += fixes.metres(last, i);
                double fromAnchorM = fixes.metres(anchor, i);
                if (standing.at(timeS)) {
                    // The way up to the stand counts once, at its first fix.
                    wayM += standing.at(fixes.timesS()[last]) ? 0 : fromAnchorM;
                    anchor = i;
                } else if (fromAnchorM >= LEAST_STEP_M) {
                    wayM += fromAnchorM;
                    anchor = i;
                }
            }
            last = i;
        }
        boolean isOpen = anchor >= 0 && last > anchor && !standing.at(fixes.timesS()[last]);
        return new TrackWay(wayM + (isOpen ? fixes.metres(anchor, last) : 0), unfilteredM, standing);
    }
}
