package org.measuredmile.recording.check;

import java.time.ZoneId;
import java.util.Locale;
import java.util.Optional;
import org.measuredmile.recording.ClockCause;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.check.DayRecording.Stretch;

/// What is said of two recordings of a day, each time with both their names.
record PairWords(ZoneId zone) {
    Finding notUsed(Choice choice, Optional<SameSamples> match) {
        return Finding.warning(
                code(match),
                Place.in(choice.other().name()),
                what(choice.kept(), match) + "; it is not used, so that no run counts twice: " + quoted(choice.kept())
                        + " " + choice.why(),
                "name its runs in recordings.csv if this one should serve");
    }

    Finding used(Choice choice, Optional<SameSamples> match) {
        return Finding.note(
                code(match),
                Place.in(choice.kept().name()),
                what(choice.other(), match) + "; this one is used: it " + choice.why());
    }

    Finding bothUsed(Choice choice, Optional<SameSamples> match) {
        return Finding.note(
                code(match),
                Place.in(choice.other().name()),
                what(choice.kept(), match) + "; both are used, for recordings.csv names other runs in each");
    }

    private static String code(Optional<SameSamples> match) {
        return match.isPresent() ? "same-ride" : "same-file";
    }

    private static String quoted(DayRecording file) {
        return "\"" + file.name() + "\"";
    }

    private static String what(DayRecording file, Optional<SameSamples> match) {
        return match.map(same -> String.format(
                        Locale.ROOT,
                        "holds the ride that %s holds too (%.0f %% of the samples agree over %.0f s%s)",
                        quoted(file),
                        100 * same.share(),
                        same.commonS(),
                        shifted(same)))
                .orElse("is byte for byte the file " + quoted(file));
    }

    private static String shifted(SameSamples match) {
        return match.byS() == 0
                ? ""
                : String.format(
                        Locale.ROOT,
                        ", their clocks %.0f s apart: %s",
                        Math.abs(match.byS()),
                        ClockCause.of(match.byS()).orElse("no known cause"));
    }

    /// That two files in use ran at the same time, when, and which is searched for runs.
    Finding overlap(Choice choice, double otherByS, boolean sameSamples) {
        Stretch common = choice.kept().common(choice.other(), otherByS);
        Stretch own = common.movedBy(-otherByS);
        String said = String.format(
                Locale.ROOT,
                "it runs from %s (%.0f s) while %s does%s",
                choice.other().words(zone, own),
                own.lengthS(),
                quoted(choice.kept()),
                sameSamples
                        ? ", with the same samples, and each goes on alone"
                        : ": two instruments on one ride, or another bike's file");
        Place place = Place.atTime(choice.other().name(), choice.other().ownS(own.fromS()));
        if (choice.both()) {
            return Finding.note(
                    "overlapping-recordings",
                    place,
                    said + "; both are searched for runs, for recordings.csv names other runs in each");
        }
        String searched = "; there, where both are searched for runs, only " + quoted(choice.kept())
                + " is, so that none counts twice: it " + choice.why();
        return told(choice)
                ? Finding.note("overlapping-recordings", place, said + searched)
                : Finding.warning(
                        "overlapping-recordings",
                        place,
                        said + searched,
                        "name in recordings.csv which file holds which runs; take a file out that is not this bike's");
    }

    /// Whether recordings.csv says which instrument wrote which, or which runs one of them holds.
    private static boolean told(Choice choice) {
        var one = choice.kept().instrument();
        var two = choice.other().instrument();
        boolean instruments = one.isPresent() && two.isPresent() && !one.equals(two);
        return instruments || !choice.kept().runs().isEmpty();
    }

    /// That one clock would have to be moved for two speeds to agree.
    Finding clock(DayRecording right, DayRecording wrong, SpeedClocks clocks) {
        return Finding.warning(
                "clock-offset-proposed",
                Place.in(wrong.name()),
                String.format(
                        Locale.ROOT,
                        "its speed follows that of %s best when its clock is moved by %+.1f s ± %.1f s (95 %%; "
                                + "correlation %.3f over %.0f s)%s",
                        quoted(right),
                        clocks.byS(),
                        1.96 * clocks.uncertaintyS(),
                        clocks.correlation(),
                        clocks.overS(),
                        ClockCause.of(clocks.byS()).map(cause -> ": " + cause).orElse("")),
                String.format(
                        Locale.ROOT,
                        "if they were on one ride, write clock-offset-s %.1f for it in recordings.csv; nothing was "
                                + "shifted",
                        wrong.offsetS() + clocks.byS()));
    }

    /// That a battery's log ran while nothing else did.
    ///
    /// @param byS what would lay it beside a ride; 0 where nothing known does
    Finding otherClock(DayRecording log, double byS) {
        String moved = String.format(
                Locale.ROOT,
                "; moved by %+.0f s it would lie beside a ride: %s",
                byS,
                ClockCause.of(byS).orElse("no known cause"));
        String remedy = String.format(
                Locale.ROOT, "if that is so, write clock-offset-s %.0f for it in recordings.csv", log.offsetS() + byS);
        return Finding.warning(
                "other-clock",
                Place.in(log.name()),
                "the battery's log (" + log.words(zone, new Stretch(log.fromS(), log.toS()))
                        + ") runs while no other recording of the day does" + (byS == 0 ? "" : moved),
                byS == 0 ? "state its clock's offset in recordings.csv" : remedy);
    }
}
