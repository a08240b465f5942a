package org.measuredmile.recording.day;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.recording.ColumnSetting;
import org.measuredmile.recording.ColumnSettings;

/// A date, a place, a crew, a bike in a configuration, its runs, readings and recordings.
///
/// Shape: lists in the order of their files.
public record TestDay(
        String id,
        LocalDate date,
        ZoneId timeZone,
        String place,
        String bike,
        Configuration configuration,
        List<CrewMember> crew,
        List<Rider> riders,
        Optional<PreRideCheck> preRideCheck,
        Conditions conditions,
        List<Instrument> instruments,
        List<Course> courses,
        List<NotRidden> notRidden,
        List<Run> runs,
        List<Reading> readings,
        List<RecordingEntry> recordings) {
    public TestDay {
        crew = List.copyOf(crew);
        riders = List.copyOf(riders);
        instruments = List.copyOf(instruments);
        courses = List.copyOf(courses);
        notRidden = List.copyOf(notRidden);
        runs = List.copyOf(runs);
        readings = List.copyOf(readings);
        recordings = List.copyOf(recordings);
    }

    public Optional<Instrument> instrument(String id) {
        return instruments.stream().filter(one -> one.id().equals(id)).findFirst();
    }

    /// What the columns of a recording's table were set to mean: by the instrument that
    /// recordings.csv names for it, or for the packed file that it lies in; where none is named, by
    /// any instrument of the day that fits.
    public ColumnSettings columnsOf(String recording) {
        return recording(recording)
                .map(RecordingEntry::instrument)
                .flatMap(this::instrument)
                .map(one -> ColumnSettings.of(one.id(), one.columns()))
                .orElseGet(this::columnsOfAnyInstrument);
    }

    private ColumnSettings columnsOfAnyInstrument() {
        var columns = new TreeMap<String, List<ColumnSetting>>();
        instruments.forEach(one -> columns.put(one.id(), one.columns()));
        return ColumnSettings.among(columns);
    }

    /// The first instrument of a kind, for readings that do not name theirs.
    public Optional<Instrument> instrument(Instrument.Kind kind) {
        return instruments.stream().filter(one -> one.kind() == kind).findFirst();
    }

    public Optional<Course> course(String id) {
        return courses.stream().filter(one -> one.id().equals(id)).findFirst();
    }

    public Optional<Rider> rider(String code) {
        return riders.stream().filter(one -> one.code().equals(code)).findFirst();
    }

    /// What recordings.csv says of a file; of one within a packed file that has no line of its own,
    /// what it says of the packed file.
    public Optional<RecordingEntry> recording(String file) {
        return recordings.stream()
                .filter(one -> one.file().equals(file))
                .findFirst()
                .or(() -> recordings.stream()
                        .filter(one -> file.startsWith(one.file() + "/"))
                        .findFirst());
    }
}
