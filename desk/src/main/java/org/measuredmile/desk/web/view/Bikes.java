package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.BikeEntry;
import org.measuredmile.archive.FigureQuery;
import org.measuredmile.archive.StoredFigure;
import org.measuredmile.comparison.verdict.ClaimVerdict;
import org.measuredmile.desk.BikeClaims;
import org.measuredmile.publication.chart.Strip;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Chapter;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Trials;

/// Makes the page of a bike out of what the archive holds of it.
public final class Bikes {
    /// So many results of a chapter are read at a glance.
    private static final int FEW = 8;

    private final Archive archive;
    private final Printing printing;
    private final BikeEntry entry;
    private final Map<String, DayReduction.Result.Reduced> days = new LinkedHashMap<>();
    private final Map<String, Origins> origins = new TreeMap<>();
    private final List<StoredFigure> figures;
    private final List<ClaimVerdict> verdicts;

    public Bikes(Archive archive, Printing printing, BikeEntry entry) {
        this.archive = archive;
        this.printing = printing;
        this.entry = entry;
        for (String day : entry.days()) {
            Reductions.of(archive, day).ifPresent(reduced -> {
                days.put(day, reduced);
                origins.put(day, new Origins(printing, day, reduced));
            });
        }
        this.figures = archive.figures(FigureQuery.ofBike(entry.id())).stream()
                .sorted(Comparator.comparing((StoredFigure one) -> one.figure().key())
                        .thenComparing(Comparator.comparing(StoredFigure::date).reversed()))
                .toList();
        this.verdicts =
                BikeClaims.of(archive, entry.id()).map(BikeClaims::verdicts).orElse(List.of());
    }

    public BikeView view() {
        var chapters = new ArrayList<BikeView.ChapterPart>();
        for (Chapter chapter : Chapter.values()) {
            chapter(chapter).ifPresent(chapters::add);
        }
        return new BikeView(
                entry.title(),
                BikeTab.FIGURES.of(entry.id()),
                facts(),
                chapters,
                notRidden(),
                days.entrySet().stream()
                        .flatMap(day -> archive.history().stream()
                                .filter(one -> one.subject().equals("day")
                                        && one.name().equals(day.getKey()))
                                .map(one -> HistoryView.row(
                                        one, day.getValue().day().timeZone())))
                        .toList(),
                days.entrySet().stream()
                        .map(day -> new BikeView.DayLink(
                                Paths.day(day.getKey()),
                                Printing.day(day.getValue().day().date())
                                        + ", "
                                        + day.getValue().day().place()))
                        .toList(),
                Paths.claims(entry.id()),
                BikeClaimsPage.counts(verdicts));
    }

    private List<BikeView.Fact> facts() {
        var facts = new ArrayList<BikeView.Fact>();
        fact(facts, "Kind", entry.category());
        fact(facts, "Drive", entry.drive().equals("both") ? "throttle and pedals" : entry.drive());
        days.values().stream().findFirst().ifPresent(latest -> {
            Bike bike = latest.bike();
            Configuration set = latest.day().configuration();
            fact(
                    facts,
                    "Levels",
                    bike.levels().isPresent() ? Integer.toString(bike.levels().getAsInt()) : "");
            fact(facts, "Firmware", set.firmware());
            fact(facts, "Battery", set.battery());
            fact(facts, "Tyres", set.tyres());
            fact(facts, "Obtained", obtained(bike));
        });
        long trials =
                figures.stream().map(one -> one.figure().trial()).distinct().count();
        long withFigures = Trials.ALL.stream()
                .filter(trial -> !trial.declaration().isReadOnce())
                .count();
        fact(facts, "Tested", trials + " of " + Printing.count(withFigures, "trial", "trials"));
        return facts;
    }

    private static String obtained(Bike bike) {
        var loan = bike.loan();
        String from = loan.from().isEmpty() ? "" : " by " + loan.from();
        String back = loan.dueBack().isEmpty() ? "" : ", due back " + loan.dueBack();
        return loan.acquired().isEmpty() ? "" : loan.acquired() + from + back;
    }

    private static void fact(List<BikeView.Fact> facts, String name, String words) {
        if (!words.isBlank()) {
            facts.add(new BikeView.Fact(name, words));
        }
    }

    private Optional<BikeView.ChapterPart> chapter(Chapter chapter) {
        var results = new ArrayList<BikeView.Result>();
        var levels = new ArrayList<BikeView.LevelsOfDays>();
        var missing = new ArrayList<BikeView.Missing>();
        var more = new ArrayList<BikeView.Result>();
        for (var trial : Trials.ALL) {
            for (FigureSpec spec : trial.declaration().figures()) {
                if (spec.chapter() == chapter) {
                    of(trial.declaration(), spec, new Found(results, levels, missing, more));
                }
            }
        }
        if (results.size() + more.size() <= FEW) {
            results.addAll(more);
            more.clear();
        }
        if (results.isEmpty() && levels.isEmpty() && missing.isEmpty() && more.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new BikeView.ChapterPart(
                chapter.title(), "chapter-" + chapter.ordinal(), remarks(chapter), results, levels, missing, more));
    }

    /// What a figure's results are put into: those that speak for a trial, as ridden, stand open; of many, the
    /// rest is folded.
    private record Found(
            List<BikeView.Result> results,
            List<BikeView.LevelsOfDays> levels,
            List<BikeView.Missing> missing,
            List<BikeView.Result> more) {
        List<BikeView.Result> listOf(FigureSpec spec, Variant variant) {
            return spec.primary() && variant.get("at").isEmpty() ? results : more;
        }
    }

    private void of(Declaration trial, FigureSpec spec, Found found) {
        var stored = figures.stream()
                .filter(one -> one.figure().key().figure().equals(spec.id()))
                .toList();
        if (stored.isEmpty()) {
            if (spec.primary()) {
                found.missing().add(missing(trial, spec));
            }
            return;
        }
        var plots = new LevelGroups(printing, trial, spec).of(stored);
        if (!plots.isEmpty()) {
            var standing = plots.stream()
                    .filter(LevelGroups.Group::accepted)
                    .findFirst()
                    .orElse(plots.getFirst());
            found.levels()
                    .add(new BikeView.LevelsOfDays(
                            levels(trial, spec, standing),
                            plots.stream()
                                    .filter(one -> !one.equals(standing))
                                    .map(one -> levels(trial, spec, one))
                                    .toList()));
        }
        var byVariant = new LinkedHashMap<Variant, List<StoredFigure>>();
        stored.stream()
                .filter(one -> plots.stream().noneMatch(group -> group.figures().contains(one)))
                .forEach(one -> byVariant
                        .computeIfAbsent(one.figure().key().variant(), variant -> new ArrayList<>())
                        .add(one));
        byVariant.forEach((variant, alike) -> found.listOf(spec, variant).add(result(trial, spec, alike)));
    }

    private BikeView.Levels levels(Declaration trial, FigureSpec spec, LevelGroups.Group group) {
        var first = group.figures().getFirst();
        return new BikeView.Levels(
                Printing.capital(spec.title()),
                trial.words(group.common()),
                Printing.shortDay(first.date()) + configuration(first),
                group.wide(),
                group.narrow(),
                group.figures().stream()
                        .map(one -> result(trial, spec, one, "", List.of()))
                        .toList());
    }

    /// One line for a figure in one variant: the latest that stands, with the others under it.
    private BikeView.Result result(Declaration trial, FigureSpec spec, List<StoredFigure> alike) {
        var standing = alike.stream().filter(StoredFigure::accepted).findFirst().orElse(alike.getFirst());
        var figure = standing.figure();
        String strip = new Strip(
                        printing.scale(figure.kind()),
                        spec.better(),
                        figure.value(),
                        figure.anyDay().interval95(),
                        others(spec, figure.key().variant()),
                        verdict(standing).map(Bikes::flag))
                .svg(Printing.capital(spec.title()));
        return result(
                trial,
                spec,
                standing,
                strip,
                alike.stream()
                        .filter(one -> !one.equals(standing))
                        .map(one -> other(one, standing))
                        .toList());
    }

    /// The claim that a figure answers, as measured or brought to the claim's conditions.
    private Optional<ClaimVerdict> verdict(StoredFigure stored) {
        return verdicts.stream()
                .filter(one -> Stream.of(one.measured(), one.atConditions())
                        .flatMap(Optional::stream)
                        .anyMatch(tried -> tried.result().day().equals(stored.day())
                                && tried.result()
                                        .figure()
                                        .key()
                                        .equals(stored.figure().key())))
                .findFirst();
    }

    private static Strip.Flag flag(ClaimVerdict verdict) {
        return new Strip.Flag(
                verdict.claim().wanted().named()[0], "claim, " + verdict.claim().words());
    }

    private BikeView.Other other(StoredFigure one, StoredFigure standing) {
        String when = one.date().isAfter(standing.date()) ? "Later" : "Earlier";
        return new BikeView.Other(
                when + ": " + printing.anyDay(one.figure()).text() + configuration(one) + ", "
                        + Printing.shortDay(one.date()) + (one.accepted() ? "" : ", not confirmed"),
                origin(one));
    }

    private Optional<OriginView> origin(StoredFigure stored) {
        return Optional.ofNullable(origins.get(stored.day())).map(one -> one.of(stored.figure()));
    }

    private BikeView.Result result(
            Declaration trial, FigureSpec spec, StoredFigure stored, String strip, List<BikeView.Other> others) {
        Variant variant = stored.figure().key().variant();
        return new BikeView.Result(
                Printing.capital(spec.title()),
                trial.words(variant),
                printing.anyDay(stored.figure()),
                strip,
                Paths.standing(spec.id(), variant),
                // A result without a strip stands under its plot, which says the day.
                strip.isEmpty() ? "" : Printing.shortDay(stored.date()) + configuration(stored),
                !stored.accepted(),
                verdict(stored).map(one -> ClaimMark.of(entry.id(), one)),
                origin(stored),
                others);
    }

    /// In which configuration, where the bike was tested in more than one.
    private String configuration(StoredFigure stored) {
        long configurations =
                figures.stream().map(StoredFigure::configuration).distinct().count();
        var day =
                Optional.ofNullable(days.get(stored.day())).map(one -> one.day().configuration());
        String firmware = day.map(Configuration::firmware).orElse("");
        return configurations < 2 || firmware.isEmpty() ? "" : ", firmware " + firmware;
    }

    /// The latest results of the other bikes in exactly the same variant.
    private List<Double> others(FigureSpec spec, Variant variant) {
        var byBike = new TreeMap<String, StoredFigure>();
        for (StoredFigure one : archive.figures(FigureQuery.standing(spec.id()))) {
            boolean isOther = !one.bike().equals(entry.id())
                    && one.figure().key().variant().equals(variant);
            if (isOther) {
                byBike.merge(one.bike(), one, (a, b) -> a.date().isBefore(b.date()) ? b : a);
            }
        }
        return byBike.values().stream().map(one -> one.figure().value()).toList();
    }

    /// Why a trial's leading figure is not there: not ridden at all, refused by the data, or not
    /// yet begun; ways in which it was not ridden are named beside the rest.
    private BikeView.Missing missing(Declaration trial, FigureSpec spec) {
        String title = Printing.capital(spec.title());
        var leftOut = days.values().stream()
                .flatMap(day -> day.day().notRidden().stream())
                .filter(one -> one.trial().equals(trial.id()))
                .distinct()
                .toList();
        var whole = leftOut.stream()
                .filter(one -> one.variant().equals(Variant.NONE))
                .findFirst();
        if (whole.isPresent()) {
            return new BikeView.Missing(
                    title, "not ridden", Printing.capital(whole.get().reason()) + ".");
        }
        String ways = leftOut.stream()
                .map(one -> " Not ridden " + trial.words(one.variant()) + ": " + one.reason() + ".")
                .collect(Collectors.joining());
        var refused = days.values().stream()
                .flatMap(day -> Optional.ofNullable(day.outcomes().get(trial.id())).stream())
                .flatMap(one -> one.findings().stream())
                .filter(one -> one.level() == Finding.Level.REFUSED)
                .map(FindingView::of)
                .findFirst();
        if (refused.isPresent()) {
            return new BikeView.Missing(
                    title,
                    "no figure",
                    refused.get().message() + " " + refused.get().remedy() + ways);
        }
        return new BikeView.Missing(
                title,
                "not measured",
                "No run of it yet. What would do: "
                        + Printing.count(trial.runs().usual(), "run", "runs") + "." + ways);
    }

    private List<String> remarks(Chapter chapter) {
        return figures.stream()
                .filter(one -> Trials.figure(one.figure().key().figure())
                        .filter(spec -> spec.chapter() == chapter)
                        .isPresent())
                .map(StoredFigure::day)
                .distinct()
                .flatMap(id -> Optional.ofNullable(days.get(id)).stream())
                .map(this::remark)
                .limit(2)
                .toList();
    }

    private String remark(DayReduction.Result.Reduced reduced) {
        var day = reduced.day();
        var words = new StringBuilder(day.place().isEmpty() ? "" : day.place() + ", ");
        words.append(Printing.shortDay(day.date()));
        String surface = day.conditions().surface();
        words.append(surface.isEmpty() ? "" : ", " + surface);
        String wind = printing.condition(day.conditions().windSpeedMps(), QuantityKind.SPEED, 1);
        words.append(wind.isEmpty() ? "" : ", wind " + wind);
        day.riders().stream()
                .filter(rider -> rider.massAsRiddenKg().isPresent())
                .findFirst()
                .ifPresent(rider -> words.append(", rider ")
                        .append(printing.condition(rider.massAsRiddenKg(), QuantityKind.MASS, 0))
                        .append(" with gear"));
        return words.toString();
    }

    private List<BikeView.Missing> notRidden() {
        var missing = new ArrayList<BikeView.Missing>();
        days.forEach((id, reduced) -> reduced.day().notRidden().forEach(one -> {
            var trial = Trials.find(one.trial()).map(found -> found.declaration());
            String title = trial.map(Declaration::title).orElse(one.trial());
            String how = trial.map(found -> found.words(one.variant()))
                    .orElse(one.variant().text());
            missing.add(new BikeView.Missing(
                    how.isEmpty() ? title : title + ", " + how,
                    Printing.shortDay(reduced.day().date()),
                    Printing.capital(one.reason()) + "."));
        }));
        return missing;
    }

    static OptionalInt number(String text) {
        return text.matches("\\d{1,4}") ? OptionalInt.of(Integer.parseInt(text)) : OptionalInt.empty();
    }
}
