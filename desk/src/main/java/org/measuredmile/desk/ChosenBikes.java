package org.measuredmile.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.BikeEntry;
import org.measuredmile.archive.StoredDay;
import org.measuredmile.comparison.sidebyside.SideBySide;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.recording.day.DayRead;
import org.measuredmile.recording.day.DayReader;
import org.measuredmile.recording.day.NotRidden;

/// The bikes that somebody named, to be put side by side.
///
/// Shape: `ids` in the order named, each once; `faults` say of each name that is no bike what to write instead.
public record ChosenBikes(List<String> ids, List<String> faults) {
    private static final int MOST_NAMED = 8;

    public ChosenBikes {
        ids = List.copyOf(ids);
        faults = List.copyOf(faults);
    }

    /// The bikes that names stand for: an id, a title or a model.
    public static ChosenBikes named(Archive archive, List<String> names) {
        var bikes = archive.bikes();
        var ids = new ArrayList<String>();
        var faults = new ArrayList<String>();
        for (String name : names) {
            var fitting = fitting(bikes, name.strip());
            if (fitting.size() != 1) {
                faults.add(fault(name, fitting.isEmpty() ? bikes : fitting, fitting.isEmpty()));
            } else if (ids.contains(fitting.getFirst().id())) {
                faults.add("\"" + name + "\": this bike is named twice; leave it out once");
            } else {
                ids.add(fitting.getFirst().id());
            }
        }
        if (faults.isEmpty() && (ids.size() < SideBySide.FEWEST || ids.size() > SideBySide.MOST)) {
            faults.add(ids.size() + (ids.size() == 1 ? " bike is" : " bikes are") + " named; name from two to six");
        }
        return new ChosenBikes(ids, faults);
    }

    /// The bike that one name stands for.
    public static ChosenBikes one(Archive archive, String name) {
        var bikes = archive.bikes();
        var fitting = fitting(bikes, name.strip());
        return fitting.size() == 1
                ? new ChosenBikes(List.of(fitting.getFirst().id()), List.of())
                : new ChosenBikes(
                        List.of(), List.of(fault(name, fitting.isEmpty() ? bikes : fitting, fitting.isEmpty())));
    }

    private static List<BikeEntry> fitting(List<BikeEntry> bikes, String name) {
        var byId = bikes.stream().filter(one -> one.id().equals(name)).toList();
        if (!byId.isEmpty()) {
            return byId;
        }
        String plain = name.toLowerCase(Locale.ROOT);
        return bikes.stream()
                .filter(one -> one.title().toLowerCase(Locale.ROOT).equals(plain)
                        || one.model().toLowerCase(Locale.ROOT).equals(plain))
                .toList();
    }

    private static String fault(String name, List<BikeEntry> choices, boolean isUnknown) {
        String some = choices.stream().limit(MOST_NAMED).map(BikeEntry::id).collect(Collectors.joining(", "));
        String more = choices.size() > MOST_NAMED ? " … (" + choices.size() + " in all)" : "";
        String remedy = choices.isEmpty() ? "no bike is in this archive yet" : "give one of " + some + more;
        return "\"" + name + "\" " + (isUnknown ? "is no bike here" : "are several bikes") + "; " + remedy;
    }

    /// The bikes beside each other.
    ///
    /// Error: IllegalArgumentException where there are faults.
    public SideBySide sideBySide(Archive archive) {
        if (!faults.isEmpty()) {
            throw new IllegalArgumentException(faults.toString());
        }
        return SideBySide.of(TestedBikes.of(archive, ids), notRidden(archive));
    }

    /// What the crews of these bikes left out and why, by bike, as their day files say.
    private Map<String, List<NotRidden>> notRidden(Archive archive) {
        var all = new TreeMap<String, List<NotRidden>>();
        archive.bikes().stream().filter(bike -> ids.contains(bike.id())).forEach(bike -> {
            var left = new ArrayList<NotRidden>();
            for (String day : bike.days()) {
                archive.day(day).map(StoredDay::folder).map(ChosenBikes::head).ifPresent(read -> {
                    if (read instanceof DayRead.Read readable) {
                        left.addAll(readable.day().notRidden());
                    }
                });
            }
            all.put(bike.id(), left);
        });
        return all;
    }

    /// A day without its runs and readings, which say nothing of what was left out and take long to read.
    private static DayRead head(DayFolder folder) {
        var texts = new TreeMap<>(folder.texts());
        texts.keySet().removeIf(name -> !name.endsWith(".yaml"));
        return DayReader.read(new DayFolder(folder.name(), texts, new TreeMap<>()));
    }
}
