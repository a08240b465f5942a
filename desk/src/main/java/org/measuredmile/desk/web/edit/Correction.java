package org.measuredmile.desk.web.edit;

import java.util.Arrays;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.archive.StoredDay;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.recording.day.DayWriter;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.trial.DayReduction;

/// A corrected test day as files: only what the correction touches is written anew, everything else keeps its bytes.
///
/// Shape: a file that held lines nobody could use is kept as it was under `kept/`, since the day as understood does not
/// hold them.
public final class Correction {
    private Correction() {}

    /// The day's files after a change of what they say.
    public static DayFolder of(StoredDay stored, DayReduction.Result.Reduced before, TestDay after) {
        Bike bike = before.bike();
        SortedMap<String, byte[]> old = DayWriter.write(before.day(), bike);
        SortedMap<String, byte[]> now = DayWriter.write(after, bike);
        var texts = new TreeMap<>(stored.folder().texts());
        now.forEach((path, bytes) -> {
            if (Arrays.equals(old.get(path), bytes) && texts.containsKey(path)) {
                return;
            }
            Optional.ofNullable(texts.put(path, bytes))
                    .filter(replaced -> heldUnusable(before, path))
                    .ifPresent(replaced ->
                            texts.put("kept/revision-" + stored.revision().number() + "-" + path, replaced));
        });
        return new DayFolder(stored.id(), texts, stored.folder().recordings());
    }

    private static boolean heldUnusable(DayReduction.Result.Reduced before, String path) {
        return before.findings().stream()
                .anyMatch(finding -> finding.place().source().endsWith(path) && finding.level() != Finding.Level.NOTE);
    }
}
