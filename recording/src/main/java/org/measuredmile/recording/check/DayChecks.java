package org.measuredmile.recording.check;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.measuredmile.recording.ClockCause;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.TestDay;

/// All that the recordings of one day say against each other and against the day.
///
/// Shape: `byFile` holds findings by file name; `leftOut` the files that hold a ride which another file holds better,
/// so that no run counts twice; `besides` the stretches of files in use during which another one is searched for runs.
public record DayChecks(SortedMap<String, List<Finding>> byFile, SortedSet<String> leftOut, List<Beside> besides) {
    private static final double OVERLAP_S = 5;

    public DayChecks {
        byFile = Collections.unmodifiableSortedMap(new TreeMap<>(byFile));
        leftOut = Collections.unmodifiableSortedSet(new TreeSet<>(leftOut));
        besides = List.copyOf(besides);
    }

    /// Checks a day's recordings.
    ///
    /// @param sha256 the hash of each file's bytes, by name; files of one hash are one file
    public static DayChecks of(TestDay day, SortedMap<String, Recording> recordings, SortedMap<String, String> sha256) {
        return new Work(day, recordings, sha256).done();
    }

    /// The checks while they run.
    private static final class Work {
        private final TestDay day;
        private final PairWords words;
        private final List<DayRecording> files = new ArrayList<>();
        private final SortedMap<String, String> sha256;
        private final SortedMap<String, List<Finding>> findings = new TreeMap<>();
        private final SortedSet<String> leftOut = new TreeSet<>();
        private final List<Beside> besides = new ArrayList<>();

        private Work(TestDay day, SortedMap<String, Recording> recordings, SortedMap<String, String> sha256) {
            this.day = day;
            this.words = new PairWords(day.timeZone());
            this.sha256 = sha256;
            recordings.values().forEach(recording -> files.add(DayRecording.of(recording, day)));
        }

        private DayChecks done() {
            files.forEach(file -> DateCheck.of(file, day).forEach(finding -> add(file, finding)));
            for (int i = 0; i < files.size(); i++) {
                for (int j = i + 1; j < files.size(); j++) {
                    same(files.get(i), files.get(j));
                }
            }
            var used = files.stream()
                    .filter(file -> !leftOut.contains(file.name()))
                    .toList();
            for (int i = 0; i < used.size(); i++) {
                for (int j = i + 1; j < used.size(); j++) {
                    apart(used.get(i), used.get(j));
                }
            }
            used.stream().filter(DayRecording::isBatteryLog).forEach(log -> alone(log, used));
            return new DayChecks(findings, leftOut, besides);
        }

        private void add(DayRecording file, Finding finding) {
            findings.computeIfAbsent(file.name(), key -> new ArrayList<>()).add(finding);
        }

        /// Whether two files are one: then one of them is left out, unless a person gave each its own runs.
        private void same(DayRecording one, DayRecording two) {
            if (leftOut.contains(one.name()) || leftOut.contains(two.name())) {
                return;
            }
            String hash = sha256.getOrDefault(one.name(), "");
            if (!hash.isEmpty() && hash.equals(sha256.get(two.name()))) {
                once(Choice.of(one, two), Optional.empty());
                return;
            }
            Optional<SameSamples> match = SameSamples.of(one, two);
            if (match.isPresent() && match.get().isWhole()) {
                once(Choice.of(one, two, match.get()), match);
            }
        }

        private void once(Choice choice, Optional<SameSamples> match) {
            if (choice.both()) {
                add(choice.other(), words.bothUsed(choice, match));
                return;
            }
            leftOut.add(choice.other().name());
            add(choice.other(), words.notUsed(choice, match));
            add(choice.kept(), words.used(choice, match));
        }

        /// Two files that are both in use: whether they ran at the same time, and whether their clocks agree.
        private void apart(DayRecording one, DayRecording two) {
            Optional<SameSamples> match = SameSamples.of(one, two);
            if (match.isPresent() && match.get().isWhole()) {
                // A person gave each its runs.
                return;
            }
            if (match.isPresent()) {
                besides(Choice.of(one, two), match.get().byS(), match);
                return;
            }
            Optional<SpeedClocks> clocks = SpeedClocks.of(one, two).filter(SpeedClocks::areApart);
            clocks.ifPresent(by -> offset(one, two, by));
            double byS = clocks.map(SpeedClocks::byS).orElse(0.0);
            if (one.moves() && two.moves() && one.commonS(two, byS) > OVERLAP_S) {
                besides(Choice.of(one, two), byS, Optional.empty());
            }
        }

        /// @param byS what to add to the second file's clock, second as they were compared
        private void besides(Choice choice, double byS, Optional<SameSamples> match) {
            boolean turned = choice.kept().name().compareTo(choice.other().name()) > 0;
            double toOtherS = turned ? -byS : byS;
            List<Beside> left = choice.both() ? List.of() : Handover.between(choice.kept(), choice.other(), toOtherS);
            besides.addAll(left);
            add(choice.other(), words.overlap(choice, toOtherS, match.isPresent()));
        }

        private void offset(DayRecording one, DayRecording two, SpeedClocks clocks) {
            // A receiver's clock is set by the satellites; where both or neither have one, the first serves.
            boolean firstIsRight = one.hasPositions() || !two.hasPositions();
            add(
                    firstIsRight ? two : one,
                    firstIsRight ? words.clock(one, two, clocks) : words.clock(two, one, clocks.turned()));
        }

        /// A battery's log that runs while nothing else does.
        private void alone(DayRecording log, List<DayRecording> used) {
            List<DayRecording> rides = used.stream()
                    .filter(file -> !file.isBatteryLog() && file.isDated())
                    .toList();
            boolean beside = rides.stream().anyMatch(ride -> ride.commonS(log, 0) > 0);
            if (log.isDated() && !rides.isEmpty() && !beside) {
                add(log, words.otherClock(log, besideBy(log, rides)));
            }
        }

        /// The offset of whole hours or leap seconds that lays a log beside a ride; 0 where none does.
        private static double besideBy(DayRecording log, List<DayRecording> rides) {
            for (double byS : ClockCause.known()) {
                for (DayRecording ride : rides) {
                    double shorterS =
                            Math.min(ride.recording().spanS(), log.recording().spanS());
                    if (ride.commonS(log, byS) > 0.9 * shorterS) {
                        return byS;
                    }
                }
            }
            return 0;
        }
    }
}
