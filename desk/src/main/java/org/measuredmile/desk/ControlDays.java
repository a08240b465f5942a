package org.measuredmile.desk;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.BikeEntry;
import org.measuredmile.archive.FigureQuery;
import org.measuredmile.archive.StoredFigure;
import org.measuredmile.comparison.control.AgainstControl;
import org.measuredmile.comparison.control.ControlChart;
import org.measuredmile.comparison.control.ControlDay;
import org.measuredmile.comparison.control.DayAndTester;
import org.measuredmile.comparison.control.Observation;
import org.measuredmile.recording.day.DayRead;
import org.measuredmile.recording.day.DayReader;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Trials;

/// What an archive holds of a control bike: its days in one figure and variant, and what days and testers
/// do to it.
public final class ControlDays {
    /// So many days make a figure worth a line on the list.
    private static final int LEAST_DAYS = 2;

    private final Archive archive;
    private final Map<String, Map<String, String>> riders = new HashMap<>();

    public ControlDays(Archive archive) {
        this.archive = archive;
    }

    /// Everything that is said of one figure and variant of the control bike.
    ///
    /// Shape: `others` are differences from the control bike by bike id, those of whose days it says
    /// something.
    public record Charted(
            String bike,
            FigureSpec spec,
            FigureKey key,
            ControlChart chart,
            List<AgainstControl> others,
            Optional<DayAndTester> components) {
        public Charted {
            others = List.copyOf(others);
        }
    }

    /// The bike that was ridden on the most test days, of equals the first by id; empty where none was on
    /// two.
    public static Optional<String> mostRidden(Archive archive) {
        BikeEntry most = null;
        for (var bike : archive.bikes()) {
            boolean isMore = most == null || bike.days().size() > most.days().size();
            boolean isFirstOfEquals = most != null
                    && bike.days().size() == most.days().size()
                    && bike.id().compareTo(most.id()) < 0;
            most = isMore || isFirstOfEquals ? bike : most;
        }
        return Optional.ofNullable(most)
                .filter(bike -> bike.days().size() >= LEAST_DAYS)
                .map(BikeEntry::id);
    }

    /// Bikes that were ridden on two days and more, by how many, most first.
    public static List<BikeEntry> candidates(Archive archive) {
        return archive.bikes().stream()
                .filter(bike -> bike.days().size() >= LEAST_DAYS)
                .sorted(java.util.Comparator.comparing(
                                (BikeEntry bike) -> -bike.days().size())
                        .thenComparing(BikeEntry::id))
                .toList();
    }

    /// The figures of a bike that stand on two days and more, in the order of the trials, and on how many.
    public Map<FigureKey, Integer> keys(String bike) {
        Map<FigureKey, TreeSet<String>> days = new TreeMap<>();
        archive.figures(new FigureQuery("", bike, "", org.measuredmile.recording.day.Variant.NONE, false, true))
                .forEach(one -> days.computeIfAbsent(one.figure().key(), key -> new TreeSet<>())
                        .add(one.day()));
        Map<FigureKey, Integer> counts = new TreeMap<>();
        days.forEach((key, on) -> {
            if (on.size() >= LEAST_DAYS) {
                counts.put(key, on.size());
            }
        });
        return counts;
    }

    /// The chart of one figure and variant; empty where the bike has no accepted result in it.
    public Optional<Charted> of(String bike, FigureKey key) {
        var spec = Trials.delivering(key.figure()).orElseThrow().declaration().requireFigure(key.figure());
        var all = archive.figures(FigureQuery.standing(key.figure()).ofEveryDay()).stream()
                .filter(one -> one.figure().key().equals(key))
                .toList();
        var own = all.stream()
                .filter(one -> one.bike().equals(bike))
                .map(this::day)
                .toList();
        if (own.isEmpty()) {
            return Optional.empty();
        }
        var observations = observations(all);
        return Optional.of(new Charted(
                bike,
                spec,
                key,
                ControlChart.of(own),
                AgainstControl.all(bike, observations),
                DayAndTester.of(observations, spec.prior().relative())));
    }

    private ControlDay day(StoredFigure one) {
        return new ControlDay(
                one.day(),
                one.date(),
                tester(
                        one,
                        one.figure().runs().stream()
                                .filter(Figure.FigureRun::counted)
                                .map(Figure.FigureRun::run)
                                .toList()),
                one.configuration(),
                one.figure().value(),
                one.figure().thisDay());
    }

    private String tester(StoredFigure one, Collection<String> runs) {
        return runs.stream()
                .map(run -> rider(one.day(), run))
                .filter(rider -> !rider.isEmpty())
                .distinct()
                .sorted()
                .collect(Collectors.joining("+"));
    }

    /// Each counted run of every bike, by the value that it gave.
    private List<Observation> observations(List<StoredFigure> figures) {
        var observations = new ArrayList<Observation>();
        for (var one : figures) {
            one.figure().runs().stream()
                    .filter(run -> run.counted() && run.value().isPresent())
                    .forEach(run -> observations.add(new Observation(
                            one.bike(),
                            one.date(),
                            rider(one.day(), run.run()),
                            run.value().getAsDouble())));
        }
        return observations;
    }

    /// The code of who rode a run; only a day's own files know it.
    private String rider(String day, String run) {
        return riders.computeIfAbsent(day, this::ridersOf).getOrDefault(run, "");
    }

    private Map<String, String> ridersOf(String day) {
        var stored = archive.day(day);
        if (stored.isEmpty()) {
            return Map.of();
        }
        return switch (DayReader.read(stored.get().folder())) {
            case DayRead.Read read ->
                read.day().runs().stream().collect(Collectors.toMap(Run::id, Run::rider, (first, second) -> first));
            case DayRead.Unusable _ -> Map.of();
        };
    }
}
