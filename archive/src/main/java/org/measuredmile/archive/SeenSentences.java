package org.measuredmile.archive;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;

/// The table of sentences as they were seen: rows are added, never changed.
final class SeenSentences {
    private static final String LATEST = """
            select s.* from sentence s
            where s.number = (select max(number) from sentence where id = s.id)
            """;

    private final Database database;

    SeenSentences(Database database) {
        this.database = database;
    }

    /// The latest row of every sentence, by id; of one bike only where one is named.
    List<SeenSentence> latest(String bike) {
        return database.sql()
                .sql(LATEST + (bike.isEmpty() ? "" : " and s.bike = ?") + " order by s.id")
                .params(bike.isEmpty() ? List.of() : List.of(bike))
                .query((row, index) -> seen(row))
                .list();
    }

    /// Every row of every sentence, in the order they were added.
    List<SeenSentence> all() {
        return database.sql()
                .sql("select * from sentence order by at, id, number")
                .query((row, index) -> seen(row))
                .list();
    }

    void add(List<SeenSentence> sentences, Instant at, String who) {
        String time = Database.text(at);
        for (var one : sentences) {
            long number = database.sql()
                    .sql("select coalesce(max(number), 0) + 1 from sentence where id = ?")
                    .param(one.id())
                    .query(Long.class)
                    .single();
            database.sql()
                    .sql("insert into sentence (id, number, at, who, bike, said, hash, written_metric,"
                            + " written_imperial, spoken_metric, spoken_imperial, method, figure, population)"
                            + " values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
                    .params(
                            one.id(),
                            number,
                            time,
                            who,
                            one.bike(),
                            one.said(),
                            one.hash(),
                            one.texts().writtenMetric(),
                            one.texts().writtenImperial(),
                            one.texts().spokenMetric(),
                            one.texts().spokenImperial(),
                            one.basis().method(),
                            one.basis().figure(),
                            one.basis().population())
                    .update();
        }
    }

    private static SeenSentence seen(ResultSet row) throws SQLException {
        return new SeenSentence(
                row.getString("id"),
                row.getString("bike"),
                row.getBoolean("said"),
                row.getString("hash"),
                new SeenSentence.Texts(
                        row.getString("written_metric"),
                        row.getString("written_imperial"),
                        row.getString("spoken_metric"),
                        row.getString("spoken_imperial")),
                new SeenSentence.Basis(row.getString("method"), row.getString("figure"), row.getString("population")),
                Instant.parse(row.getString("at")),
                row.getString("who"));
    }
}
