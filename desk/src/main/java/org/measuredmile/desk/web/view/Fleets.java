package org.measuredmile.desk.web.view;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.BikeEntry;
import org.measuredmile.archive.FigureQuery;
import org.measuredmile.archive.StoredFigure;
import org.measuredmile.publication.chart.StandingTile;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Trials;

/// Makes the page of the fleet.
public final class Fleets {
    private static final StandingTile.Size TILE = new StandingTile.Size(110, 16);

    private final Printing printing;
    private final List<BikeEntry> bikes;
    private final Map<String, Map<FigureKey, StoredFigure>> byBike = new TreeMap<>();
    private final List<Lead> leads = new ArrayList<>();

    /// A column's figure: of which trial, in which variant, on which axis.
    private record Lead(Declaration trial, FigureSpec spec, FigureKey key, StandingTile tile) {}

    public Fleets(Archive archive, Printing printing) {
        this.printing = printing;
        this.bikes = archive.bikes();
        for (StoredFigure one : archive.figures(FigureQuery.LATEST)) {
            byBike.computeIfAbsent(one.bike(), bike -> new TreeMap<>())
                    .merge(one.figure().key(), one, (a, b) -> a.date().isBefore(b.date()) ? b : a);
        }
        for (var trial : Trials.ALL) {
            trial.declaration().figures().stream()
                    .filter(FigureSpec::primary)
                    .forEach(spec -> lead(trial.declaration(), spec).ifPresent(leads::add));
        }
    }

    /// The column of a figure: in the variant that most bikes have.
    private Optional<Lead> lead(Declaration trial, FigureSpec spec) {
        Map<Variant, Long> counts = byBike.values().stream()
                .flatMap(figures -> figures.keySet().stream())
                .filter(key -> key.figure().equals(spec.id()))
                .collect(Collectors.groupingBy(FigureKey::variant, TreeMap::new, Collectors.counting()));
        return counts.entrySet().stream()
                .max(Map.Entry.<Variant, Long>comparingByValue()
                        .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
                .map(most -> new FigureKey(spec.id(), most.getKey()))
                .map(key -> new Lead(trial, spec, key, tile(spec, key)));
    }

    private StandingTile tile(FigureSpec spec, FigureKey key) {
        var places = byBike.values().stream()
                .flatMap(figures -> Optional.ofNullable(figures.get(key)).stream())
                .map(Fleets::place)
                .toList();
        return new StandingTile(printing.scale(spec.kind()), spec.better(), TILE, places);
    }

    private static StandingTile.Place place(StoredFigure one) {
        return new StandingTile.Place(
                one.figure().value(), one.figure().anyDay().interval95());
    }

    public FleetView view(FleetView.Wish wish) {
        var rows = bikes.stream()
                .filter(bike -> wish.category().isEmpty() || bike.category().equals(wish.category()))
                .sorted(order(wish.order()))
                .map(this::row)
                .toList();
        return new FleetView(
                leads.stream().map(this::column).toList(),
                rows,
                bikes.stream()
                        .map(BikeEntry::category)
                        .filter(one -> !one.isEmpty())
                        .distinct()
                        .sorted()
                        .toList(),
                orders(),
                wish,
                bikes.size() - rows.size());
    }

    private FleetView.Column column(Lead lead) {
        var unit = printing.scale(lead.spec().kind());
        return new FleetView.Column(
                Printing.capital(lead.spec().title()),
                lead.trial().words(lead.key().variant()),
                unit.unit().symbol(),
                unit.hasOther() ? unit.other().unit().symbol() : "",
                lead.tile().head(),
                Paths.standing(lead.spec().id(), lead.key().variant()));
    }

    private FleetView.Row row(BikeEntry bike) {
        var figures = byBike.getOrDefault(bike.id(), Map.of());
        return new FleetView.Row(
                Paths.bike(bike.id()),
                bike.title(),
                kind(bike),
                leads.stream()
                        .map(lead ->
                                Optional.ofNullable(figures.get(lead.key())).map(one -> cell(lead, one)))
                        .toList(),
                Printing.count(bike.days().size(), "day", "days"),
                lastTested(bike).map(Printing::shortDay).orElse(""));
    }

    private FleetView.Cell cell(Lead lead, StoredFigure one) {
        return new FleetView.Cell(
                printing.anyDay(one.figure()), lead.tile().row(place(one), StandingTile.Kind.MEASURED));
    }

    private static String kind(BikeEntry bike) {
        String drive = bike.drive().equals("both") ? "throttle and pedals" : bike.drive();
        return bike.category().isEmpty() || drive.isEmpty() ? bike.category() + drive : bike.category() + ", " + drive;
    }

    private Optional<LocalDate> lastTested(BikeEntry bike) {
        return byBike.getOrDefault(bike.id(), Map.of()).values().stream()
                .map(StoredFigure::date)
                .max(Comparator.naturalOrder());
    }

    /// By name, by when they were last tested, or by a column's figure, better first; bikes without it last.
    private Comparator<BikeEntry> order(String wish) {
        var byName = Comparator.comparing((BikeEntry bike) -> bike.title().toLowerCase(Locale.ROOT));
        if (wish.equals("tested")) {
            return Comparator.comparing((BikeEntry bike) -> lastTested(bike).orElse(LocalDate.MIN))
                    .reversed()
                    .thenComparing(byName);
        }
        return leads.stream()
                .filter(lead -> lead.spec().id().equals(wish))
                .findFirst()
                .map(lead -> Comparator.comparingDouble((BikeEntry bike) -> rankingValue(lead, bike))
                        .thenComparing(byName))
                .orElse(byName);
    }

    private double rankingValue(Lead lead, BikeEntry bike) {
        var figure = byBike.getOrDefault(bike.id(), Map.of()).get(lead.key());
        if (figure == null) {
            return Double.POSITIVE_INFINITY;
        }
        return lead.spec().better() == Better.LESS
                ? figure.figure().value()
                : -figure.figure().value();
    }

    /// The orders that can be asked for, by what they are called.
    private Map<String, String> orders() {
        var orders = new java.util.LinkedHashMap<String, String>();
        orders.put("name", "name");
        orders.put("tested", "last tested");
        leads.forEach(lead -> orders.put(lead.spec().id(), lead.spec().title()));
        return orders;
    }
}
