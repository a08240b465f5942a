package org.measuredmile.comparison.legal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.measuredmile.comparison.legal.LegalRule.Measured;
import org.measuredmile.comparison.legal.LegalRule.Operator;
import org.measuredmile.quantity.Unit;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.schema.FailsafeSchema;

/// The classes that are compared, read from the data beside this class.
///
/// Error: IllegalStateException for data that cannot be read: they are part of the program, and a test reads them.
public final class LegalRules {
    private static final String FILE = "rules.yaml";

    /// Every class, in the order of the data, those no longer in force too.
    public static final List<LegalClass> ALL = read();

    private LegalRules() {}

    /// The classes that stand today.
    public static List<LegalClass> inForce() {
        return ALL.stream().filter(LegalClass::isInForce).toList();
    }

    /// A class by its id.
    public static Optional<LegalClass> find(String id) {
        return ALL.stream().filter(one -> one.id().equals(id)).findFirst();
    }

    private static List<LegalClass> read() {
        var settings = LoadSettings.builder().setSchema(new FailsafeSchema()).build();
        try (var stream = LegalRules.class.getResourceAsStream(FILE)) {
            if (stream == null) {
                throw new IllegalStateException(FILE + " is not beside its class");
            }
            String text = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
            var classes = new ArrayList<LegalClass>();
            for (var entry : list(new Load(settings).loadFromString(text))) {
                classes.add(legalClass(new Entry(entry)));
            }
            return List.copyOf(classes);
        } catch (IOException disk) {
            throw new UncheckedIOException(disk);
        }
    }

    /// One mapping of the data; every value is text.
    private record Entry(Map<?, ?> values) {
        Entry(Object node) {
            this(node instanceof Map<?, ?> map ? map : Map.of());
        }

        Optional<String> get(String key) {
            return values.get(key) instanceof String text ? Optional.of(text.strip()) : Optional.empty();
        }

        String require(String key) {
            return get(key).orElseThrow(() -> new IllegalStateException(FILE + ": " + key + " is missing: " + values));
        }

        List<?> list(String key) {
            return values.get(key) instanceof List<?> all ? all : List.of();
        }
    }

    private static List<?> list(Object node) {
        return node instanceof List<?> list ? list : List.of();
    }

    private static LegalClass legalClass(Entry entry) {
        String section = entry.require("section");
        return new LegalClass(
                entry.require("id"),
                entry.require("jurisdiction"),
                entry.require("title"),
                named(LegalClass.Basis.values(), LegalRules::plain, entry.require("basis")),
                section,
                entry.get("date").orElse(""),
                entry.get("until").orElse(""),
                named(LegalClass.Known.values(), LegalRules::plain, entry.require("known")),
                entry.require("source"),
                entry.get("note").orElse(""),
                entry.list("labels").stream().map(String.class::cast).toList(),
                entry.list("rules").stream()
                        .map(rule -> rule(new Entry(rule), section))
                        .toList());
    }

    private static LegalRule rule(Entry entry, String section) {
        return new LegalRule(
                named(Measured.values(), Measured::id, entry.require("measured")),
                named(Operator.values(), Operator::id, entry.require("operator")),
                entry.get("limit").map(LegalRules::limit),
                entry.get("otherwise").map(LegalRules::limit),
                entry.get("ofMarked").map(BigDecimal::new),
                entry.get("rider").map(LegalRules::limit).stream()
                        .mapToDouble(mass -> mass.unit().toSi(mass.value().doubleValue()))
                        .findFirst(),
                entry.get("section").orElse(section),
                entry.require("asks"));
    }

    private static LegalLimit limit(String text) {
        String[] parts = text.split(" ");
        return new LegalLimit(new BigDecimal(parts[0]), named(Unit.values(), Unit::symbol, parts[1]));
    }

    private static String plain(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT);
    }

    private static <T> T named(T[] all, Function<T, String> name, String wanted) {
        return Arrays.stream(all)
                .filter(one -> name.apply(one).equals(wanted))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException(FILE + ": nothing is called " + wanted));
    }
}
