package org.measuredmile.archive;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.function.Supplier;
import org.flywaydb.core.Flyway;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/// The archive's database: one SQLite file, brought to the current schema when opened.
///
/// Shape: each read outside a transaction sees what was last committed; writes go through [#inTransaction]. A
/// connection is opened for each piece of work, which costs SQLite less than a pool would.
final class Database {
    private static final String SCHEMA = "classpath:org/measuredmile/archive/schema/";
    private static final DateTimeFormatter UTC_MICROSECONDS = DateTimeFormatter.ofPattern(
                    "uuuu-MM-dd'T'HH:mm:ss.SSSSSS'Z'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);

    private final JdbcClient sql;
    private final TransactionTemplate transaction;

    private Database(SQLiteDataSource source) {
        sql = JdbcClient.create(source);
        transaction = new TransactionTemplate(new DataSourceTransactionManager(source));
    }

    static Database open(Path file) {
        var config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.enforceForeignKeys(true);
        config.setBusyTimeout(5000);
        // A transaction that reads before it writes would otherwise lose to another one instead of waiting for
        // it.
        config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
        var source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file);
        Flyway.configure(Database.class.getClassLoader())
                .dataSource(source)
                .locations(SCHEMA + "tables", SCHEMA + "sqlite")
                .loggers("slf4j")
                .load()
                .migrate();
        return new Database(source);
    }

    JdbcClient sql() {
        return sql;
    }

    <T> @Nullable T inTransaction(Supplier<? extends @Nullable T> work) {
        return transaction.execute(status -> work.get());
    }

    /// A time as the tables hold it.
    static String text(Instant time) {
        return UTC_MICROSECONDS.format(time);
    }
}
