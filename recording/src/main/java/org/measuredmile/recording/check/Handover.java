package org.measuredmile.recording.check;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.recording.check.DayRecording.Stretch;

/// Who is searched for runs while two files run at the same time.
///
/// The better file serves. Where the other one goes on after it, or began before it, the two change over while the bike
/// stands, where it does, so that no run is cut in two.
final class Handover {
    private Handover() {}

    /// The stretches of either file that are left to the other.
    ///
    /// @param byS what to add to the other file's clock to have the better one's
    static List<Beside> between(DayRecording better, DayRecording other, double byS) {
        Stretch common = better.common(other, byS);
        boolean beganBefore = other.fromS() + byS < better.fromS();
        boolean goesOn = other.toS() + byS > better.toS();
        double toBetterS = beganBefore ? changeS(other, byS, common, false) : common.fromS();
        double toOtherS = goesOn ? changeS(other, byS, new Stretch(toBetterS, common.toS()), true) : common.toS();
        List<Beside> besides = new ArrayList<>();
        add(besides, better, other, new Stretch(common.fromS(), toBetterS));
        add(besides, other, better, new Stretch(toBetterS, toOtherS).movedBy(-byS));
        add(besides, better, other, new Stretch(toOtherS, common.toS()));
        return besides;
    }

    /// A standstill of the other file, by the better one's clock; where it never stands, the end of what is common.
    private static double changeS(DayRecording other, double byS, Stretch common, boolean last) {
        return other.standsS(common.movedBy(-byS), last).orElse((last ? common.toS() : common.fromS()) - byS) + byS;
    }

    private static void add(List<Beside> besides, DayRecording file, DayRecording with, Stretch stretch) {
        if (stretch.lengthS() > 0) {
            besides.add(new Beside(file.name(), with.name(), file.ownS(stretch.fromS()), file.ownS(stretch.toS())));
        }
    }
}
