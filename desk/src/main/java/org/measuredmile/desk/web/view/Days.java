package org.measuredmile.desk.web.view;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.DayEntry;
import org.measuredmile.archive.HistoryEntry;
import org.measuredmile.archive.Revision;
import org.measuredmile.archive.StoredDay;
import org.measuredmile.desk.web.edit.Runs;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.NotRidden;
import org.measuredmile.recording.day.PreRideCheck;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.Trials;

/// Makes the page of a test day.
public final class Days {
    private final Archive archive;
    private final Printing printing;
    private final DayEntry entry;
    private final StoredDay stored;
    private final Optional<DayReduction.Result.Reduced> reduced;
    private final List<HistoryEntry> history;
    private final long since;

    /// @param since the revision before which files are old; what came after is marked
    public Days(Archive archive, Printing printing, String id, long since) {
        this.archive = archive;
        this.printing = printing;
        this.entry = archive.entry(id).orElseThrow();
        this.stored = archive.day(id).orElseThrow();
        this.reduced = Reductions.of(archive, id);
        this.history = archive.history(Revision.Subject.DAY, id);
        this.since = since;
    }

    public DayView view() {
        var zone = reduced.map(one -> one.day().timeZone()).orElse(java.time.ZoneOffset.UTC);
        return new DayView(
                entry.id(),
                Paths.day(entry.id()),
                reduced.map(Days::title).orElse(entry.id()),
                reduced.isPresent(),
                reduced.map(this::facts).orElse(List.of()),
                reduced.map(this::check).orElse(new DayView.Check(false, "", "", "", false)),
                reduced.map(this::sheets).orElse(List.of()),
                new DayFiles(printing, stored, reduced, newFiles()).rows(),
                reduced.map(one -> new ColumnTables(archive, entry.id(), one).panel())
                        .orElse(new ColumnsView.Panel(false, "", List.of(), List.of())),
                reduced.map(this::proposals).orElse(List.of()),
                reduced.map(this::figures).orElse(List.of()),
                FindingView.of(reduced.map(Days::dayFindings).orElse(entry.findings())),
                reduced.map(this::notRidden).orElse(List.of()),
                history.reversed().stream()
                        .map(one -> HistoryView.row(one, zone))
                        .toList(),
                problems());
    }

    private List<String> problems() {
        return switch (entry.state()) {
            case REDUCED -> List.of();
            case UNUSABLE -> List.of("The day's own files cannot be used yet; every file is kept.");
            case FAILED -> List.of("Reducing this day failed: " + entry.message() + " Every file is kept.");
        };
    }

    static String title(DayReduction.Result.Reduced reduced) {
        return Printing.weekday(reduced.day().date()) + ", " + reduced.bike().title();
    }

    private List<BikeView.Fact> facts(DayReduction.Result.Reduced one) {
        TestDay day = one.day();
        var facts = new ArrayList<BikeView.Fact>();
        fact(facts, "Place", day.place());
        fact(
                facts,
                "Crew",
                day.crew().stream()
                        .map(member -> member.code() + (member.role().isEmpty() ? "" : " " + member.role()))
                        .collect(Collectors.joining(", ")));
        fact(
                facts,
                "Rider",
                day.riders().stream()
                        .map(rider -> rider.code()
                                + (rider.massAsRiddenKg().isEmpty()
                                        ? ""
                                        : ", " + printing.condition(rider.massAsRiddenKg(), QuantityKind.MASS, 0)
                                                + " with gear"))
                        .collect(Collectors.joining("; ")));
        weather(facts, day.conditions());
        var set = day.configuration();
        fact(
                facts,
                "Tyres, cold",
                join(
                        printing.condition(set.tyrePressureFrontPa(), QuantityKind.PRESSURE, 0),
                        printing.condition(set.tyrePressureRearPa(), QuantityKind.PRESSURE, 0)));
        fact(facts, "Battery", printing.condition(day.conditions().stateOfCharge(), QuantityKind.RATIO, 0));
        fact(facts, "Firmware", set.firmware());
        var noon = day.date().atTime(LocalTime.NOON).atZone(day.timeZone()).toInstant();
        String clock = Printing.zoneName(noon, day.timeZone());
        String zone = day.timeZone().getId();
        fact(facts, "Clock times", zone.equals("Z") || zone.equals(clock) ? clock : clock + ", " + zone);
        return facts;
    }

    private void weather(List<BikeView.Fact> facts, Conditions air) {
        String wind = printing.condition(air.windSpeedMps(), QuantityKind.SPEED, 1);
        fact(
                facts,
                "Air",
                join(
                        printing.condition(air.airTemperatureK(), QuantityKind.TEMPERATURE, 1),
                        printing.condition(air.pressurePa(), QuantityKind.PRESSURE, 1)));
        fact(facts, "Humidity", printing.condition(air.relativeHumidity(), QuantityKind.RATIO, 0));
        fact(facts, "Wind", wind.isEmpty() || air.windFrom().isEmpty() ? wind : wind + ", from " + air.windFrom());
        fact(facts, "Surface", air.surface());
    }

    private static String join(String first, String second) {
        return first.isEmpty() || second.isEmpty() ? first + second : first + ", " + second;
    }

    private static void fact(List<BikeView.Fact> facts, String name, String words) {
        if (!words.isBlank()) {
            facts.add(new BikeView.Fact(name, words));
        }
    }

    private DayView.Check check(DayReduction.Result.Reduced one) {
        boolean wanted =
                Trials.ALL.stream().anyMatch(trial -> trial.declaration().needsPreRideCheck());
        return one.day()
                .preRideCheck()
                .filter(PreRideCheck::isTicked)
                .map(done -> new DayView.Check(true, done.by(), done.secondPerson(), done.time(), wanted))
                .orElse(new DayView.Check(false, "", "", "", wanted));
    }

    private List<DayView.Sheet> sheets(DayReduction.Result.Reduced one) {
        return Trials.ALL.stream().map(trial -> sheet(one, trial.declaration())).toList();
    }

    private DayView.Sheet sheet(DayReduction.Result.Reduced one, Declaration trial) {
        var all = runs(one, trial.id());
        var runs = all.stream().filter(run -> !isFound(one, run)).toList();
        int found = all.size() - runs.size();
        long counted = runs.stream().filter(RunResult::counted).count();
        return new DayView.Sheet(
                trial.title(),
                Paths.trial(entry.id(), trial.id()),
                trial.isReadOnce()
                        ? read(one, trial)
                        : runs.isEmpty() ? found > 0 ? "" : "not begun" : counted + " of " + runs.size() + " count",
                found == 0 ? "" : found + " found, not decided",
                runs.stream().map(this::tick).toList(),
                !runs.isEmpty());
    }

    /// How much of a trial without runs is written down.
    private static String read(DayReduction.Result.Reduced one, Declaration trial) {
        long read = one.day().readings().stream()
                .filter(reading -> reading.run().isEmpty())
                .filter(reading -> trial.reading(reading.name()).isPresent())
                .count();
        return read == 0 ? "nothing written" : Printing.count(read, "reading", "readings");
    }

    /// Whether the tool found the run and nobody has decided on it.
    private static boolean isFound(DayReduction.Result.Reduced one, RunResult run) {
        return run.state() == Run.State.PROPOSED && !Runs.isWritten(one.day(), run);
    }

    private static List<RunResult> runs(DayReduction.Result.Reduced one, String trial) {
        return Optional.ofNullable(one.outcomes().get(trial)).map(Outcome::runs).orElse(List.of());
    }

    private DayView.Tick tick(RunResult run) {
        String css = run.counted() ? "valid" : "struck";
        return new DayView.Tick(
                run.run(),
                Paths.run(entry.id(), run.run()),
                RunWords.state(run.state(), run.counted()),
                run.state() == Run.State.PROPOSED ? "open" : css);
    }

    private List<DayView.Proposals> proposals(DayReduction.Result.Reduced one) {
        var proposals = new ArrayList<DayView.Proposals>();
        one.outcomes().forEach((id, outcome) -> {
            var trial = Trials.find(id).orElseThrow().declaration();
            var found = outcome.runs().stream()
                    .filter(run -> run.state() == Run.State.PROPOSED)
                    .map(run -> proposal(trial, run))
                    .toList();
            if (!found.isEmpty()) {
                proposals.add(new DayView.Proposals(id, trial.title(), found));
            }
        });
        return proposals;
    }

    private DayView.Proposal proposal(Declaration trial, RunResult run) {
        String where = run.stretch()
                .map(stretch -> stretch.recording() + ", "
                        + String.format(Locale.ROOT, "%.1f to %.1f\u00a0s", stretch.fromS(), stretch.toS()))
                .orElse("");
        // A result is not shown before the run is decided on, so that no run is chosen for it.
        String values = run.values().stream()
                .filter(value -> value.kind() == QuantityKind.SPEED)
                .findFirst()
                .map(value -> value.title() + " " + printing.value(value).text())
                .orElse("");
        return new DayView.Proposal(
                run.run(),
                Paths.run(entry.id(), run.run()),
                trial.words(run.variant()),
                where,
                values,
                run.counted() || run.reason().startsWith("found beside"),
                Printing.capital(RunWords.reason(run.reason())));
    }

    private List<DayView.Line> figures(DayReduction.Result.Reduced one) {
        return one.figures().stream().map(this::line).toList();
    }

    DayView.Line line(Figure figure) {
        var trial = Trials.find(figure.trial()).orElseThrow().declaration();
        return new DayView.Line(
                Printing.capital(trial.requireFigure(figure.key().figure()).title()),
                trial.words(figure.key().variant()),
                printing.anyDay(figure),
                printing.thisDay(figure).text(),
                figure.counted() + " of " + Printing.count(figure.runs().size(), "run", "runs"));
    }

    private static List<org.measuredmile.recording.Finding> dayFindings(DayReduction.Result.Reduced one) {
        var findings = new ArrayList<>(one.findings());
        one.outcomes().values().forEach(outcome -> findings.addAll(outcome.findings()));
        return findings;
    }

    private List<BikeView.Missing> notRidden(DayReduction.Result.Reduced one) {
        return one.day().notRidden().stream().map(Days::missing).toList();
    }

    private static BikeView.Missing missing(NotRidden left) {
        var trial = Trials.find(left.trial()).map(found -> found.declaration());
        return new BikeView.Missing(
                trial.map(Declaration::title).orElse(left.trial()),
                trial.map(found -> found.words(left.variant()))
                        .orElse(left.variant().text()),
                left.reason());
    }

    /// Paths of files that a later revision than `since` brought.
    private List<String> newFiles() {
        return history.stream()
                .filter(one -> since > 0 && one.number() > since)
                .flatMap(one -> one.changes().stream())
                .filter(change -> change.startsWith("added ") || change.startsWith("changed "))
                .map(change -> change.substring(change.indexOf(' ') + 1))
                .toList();
    }
}
