package org.measuredmile.archive;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.archive.json.BikeJson;
import org.measuredmile.archive.json.FigureJson;
import org.measuredmile.archive.json.FindingJson;
import org.measuredmile.archive.json.Json;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Trials;

/// The tables of reductions and figures: a cache, replaced day by day.
final class Figures {
    private static final String ENTRY = """
            select r.*, v.number as revision, v.at as revised_at,
                   (select count(*) from figure f where f.day = r.day) as figures
            from reduction r
            join revision v on v.subject = 'day' and v.name = r.day
                 and v.number = (select max(number) from revision where subject = 'day' and name = r.day)
            """;

    /// What stands for a day without a bike; an empty text is of an archive from before bikes were kept here.
    private static final String NOTHING_KNOWN = "{}";

    private final Database database;

    Figures(Database database) {
        this.database = database;
    }

    /// Puts what a revision gave in place of what stood there for its day.
    void replace(Revision revision, DayReduction.Result result) {
        switch (result) {
            case DayReduction.Result.Reduced reduced -> {
                clear(revision.name());
                insert(revision, DayEntry.State.REDUCED, "", Optional.of(reduced), reduced.findings());
                FigureRow.of(revision.name(), reduced).forEach(this::insert);
            }
            case DayReduction.Result.Unusable unusable -> {
                clear(revision.name());
                insert(revision, DayEntry.State.UNUSABLE, "", Optional.empty(), unusable.findings());
            }
        }
    }

    /// Notes that the program failed on a revision; its day has no figures until it is reduced again.
    void fail(Revision revision, String message) {
        clear(revision.name());
        insert(revision, DayEntry.State.FAILED, message, Optional.empty(), List.of());
    }

    private void clear(String day) {
        database.sql().sql("delete from figure where day = ?").param(day).update();
        database.sql().sql("delete from reduction where day = ?").param(day).update();
        database.sql().sql("update figure_change set number = number + 1").update();
    }

    /// How often figures were replaced and ledgers revised: as long as it is the same, so are all of them.
    String state() {
        return database.sql()
                .sql("select (select number from figure_change) as figures,"
                        + " (select count(*) from revision where subject = 'ledger') as ledgers")
                .query((row, index) -> row.getLong("figures") + " " + row.getLong("ledgers"))
                .single();
    }

    private void insert(
            Revision revision,
            DayEntry.State state,
            String message,
            Optional<DayReduction.Result.Reduced> reduced,
            List<Finding> findings) {
        var bike = reduced.map(DayReduction.Result.Reduced::bike);
        var day = reduced.map(DayReduction.Result.Reduced::day);
        database.sql()
                .sql("insert into reduction (day, number, method, state, message, date, place, bike, maker, model,"
                        + " category, drive, findings, about) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
                .params(
                        revision.name(),
                        revision.number(),
                        Reducer.method(),
                        state.name(),
                        message,
                        day.map(one -> one.date().toString()).orElse(""),
                        day.map(one -> one.place()).orElse(""),
                        day.map(one -> one.bike()).orElse(""),
                        bike.map(one -> one.maker()).orElse(""),
                        bike.map(one -> one.model()).orElse(""),
                        bike.map(one -> one.category()).orElse(""),
                        bike.map(one -> one.drive()).orElse(""),
                        Json.compact(FindingJson.write(findings)),
                        bike.map(one -> Json.compact(BikeJson.write(one))).orElse(NOTHING_KNOWN))
                .update();
    }

    private void insert(FigureRow row) {
        database.sql()
                .sql("insert into figure (day, figure, variant, trial, version, kind, bike, configuration, date, value,"
                        + " low, high, accepted, json) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
                .params(
                        row.day(),
                        row.figure(),
                        row.variant(),
                        row.trial(),
                        row.version(),
                        row.kind(),
                        row.bike(),
                        row.configuration(),
                        row.date(),
                        row.value(),
                        row.low(),
                        row.high(),
                        row.accepted(),
                        row.json())
                .update();
    }

    List<DayEntry> days() {
        return database.sql()
                .sql(ENTRY + " order by r.date desc, r.day")
                .query((row, index) -> entry(row))
                .list();
    }

    Optional<DayEntry> day(String id) {
        return database.sql()
                .sql(ENTRY + " where r.day = ?")
                .param(id)
                .query((row, index) -> entry(row))
                .optional();
    }

    List<BikeEntry> bikes() {
        var bikes = new LinkedHashMap<String, BikeEntry>();
        for (var day : days()) {
            if (day.state() == DayEntry.State.REDUCED) {
                bikes.merge(
                        day.bike(),
                        new BikeEntry(
                                day.bike(), day.maker(), day.model(), day.category(), day.drive(), List.of(day.id())),
                        Figures::oneMoreDay);
            }
        }
        return bikes.values().stream()
                .sorted(java.util.Comparator.comparing(BikeEntry::title).thenComparing(BikeEntry::id))
                .toList();
    }

    private static BikeEntry oneMoreDay(BikeEntry latest, BikeEntry earlier) {
        var days = new ArrayList<>(latest.days());
        days.addAll(earlier.days());
        return new BikeEntry(latest.id(), latest.maker(), latest.model(), latest.category(), latest.drive(), days);
    }

    /// Every bike as its latest reduced day describes it, by id.
    SortedMap<String, Bike> described() {
        var bikes = new TreeMap<String, Bike>();
        database.sql()
                .sql("select bike, about from reduction where state = 'REDUCED' and about <> ''"
                        + " order by date desc, day")
                .query((row, index) -> BikeJson.read(Json.parse(row.getString("about"))))
                .list()
                .forEach(bike -> bikes.putIfAbsent(bike.id(), bike));
        return bikes;
    }

    List<StoredFigure> query(FigureQuery query) {
        var all = database
                .sql()
                .sql("""
                        select f.*, r.maker, r.model, r.category, r.drive
                        from figure f join reduction r on r.day = f.day
                        where (f.figure = :figure or :figure = '') and (f.bike = :bike or :bike = '')
                          and (f.day = :day or :day = '') and (f.accepted or not :accepted)
                        order by f.bike, f.configuration, f.figure, f.variant, f.date desc, f.day desc
                        """)
                .param("figure", query.figure())
                .param("bike", query.bike())
                .param("day", query.day())
                .param("accepted", query.accepted())
                .query((row, index) -> figure(row))
                .list()
                .stream()
                .filter(Figures::isCurrent)
                .filter(one -> one.figure().key().variant().covers(query.variant()))
                .toList();
        return query.latest() ? firstOfEach(all) : all;
    }

    private static List<StoredFigure> firstOfEach(List<StoredFigure> latestFirst) {
        record Key(String bike, String configuration, String figure) {}
        var first = new LinkedHashMap<Key, StoredFigure>();
        latestFirst.forEach(one -> first.putIfAbsent(
                new Key(one.bike(), one.configuration(), one.figure().key().text()), one));
        return List.copyOf(first.values());
    }

    private static boolean isCurrent(StoredFigure stored) {
        return Trials.find(stored.figure().trial())
                .filter(trial ->
                        trial.declaration().version() == stored.figure().version())
                .isPresent();
    }

    List<FigureRow> rows(String day) {
        return database.sql()
                .sql("select * from figure where day = ? order by figure, variant")
                .param(day)
                .query((row, index) -> new FigureRow(
                        row.getString("day"),
                        row.getString("figure"),
                        row.getString("variant"),
                        row.getString("trial"),
                        row.getInt("version"),
                        row.getString("kind"),
                        row.getString("bike"),
                        row.getString("configuration"),
                        row.getString("date"),
                        row.getDouble("value"),
                        row.getDouble("low"),
                        row.getDouble("high"),
                        row.getBoolean("accepted"),
                        row.getString("json")))
                .list();
    }

    /// The days whose figures are of another method or another revision than the current one, or are missing.
    List<String> outOfDate() {
        return database.sql()
                .sql("""
                        select v.name from revision v left join reduction r on r.day = v.name
                        where v.subject = 'day'
                        group by v.name
                        having max(r.number) is null or max(v.number) <> max(r.number)
                            or max(r.method) <> :method or max(r.state) = 'FAILED'
                            or max(r.about) = ''
                        order by v.name
                        """)
                .param("method", Reducer.method())
                .query((row, index) -> row.getString(1))
                .list();
    }

    private static StoredFigure figure(ResultSet row) throws SQLException {
        var json = row.getString("json");
        var node = Json.parse(json);
        var bike = new BikeEntry(
                row.getString("bike"),
                row.getString("maker"),
                row.getString("model"),
                row.getString("category"),
                row.getString("drive"),
                List.of());
        return new StoredFigure(
                row.getString("day"),
                LocalDate.parse(row.getString("date")),
                bike.id(),
                bike.title(),
                bike.category(),
                bike.drive(),
                row.getString("configuration"),
                row.getBoolean("accepted"),
                FigureJson.read(node, QuantityKind.valueOf(row.getString("kind"))),
                FigureJson.readCorrelations(node),
                json);
    }

    private static DayEntry entry(ResultSet row) throws SQLException {
        return new DayEntry(
                row.getString("day"),
                row.getLong("revision"),
                Instant.parse(row.getString("revised_at")),
                DayEntry.State.valueOf(row.getString("state")),
                row.getString("date"),
                row.getString("place"),
                row.getString("bike"),
                row.getString("maker"),
                row.getString("model"),
                row.getString("category"),
                row.getString("drive"),
                row.getLong("figures"),
                row.getString("message"),
                FindingJson.readAll(Json.parse(row.getString("findings"))));
    }
}
