package org.measuredmile.archive;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.measuredmile.archive.Recomputation.Difference;
import org.measuredmile.archive.Revision.Subject;
import org.measuredmile.archive.json.Json;
import tools.jackson.databind.JsonNode;

/// Rebuilds the archive's figures from its kept files and compares.
final class Recomputing {
    private final Archive archive;
    private final Progress progress;
    private final List<Difference> differences = new ArrayList<>();
    private final Set<String> damagedDays = new HashSet<>();
    private final Map<String, String> faults = new TreeMap<>();
    private long figures;

    Recomputing(Archive archive, Progress progress) {
        this.archive = archive;
        this.progress = progress;
    }

    Recomputation all() {
        for (var subject : Subject.values()) {
            archive.revisions().all(subject).forEach(this::checkFiles);
        }
        var days = archive.revisions().names(Subject.DAY);
        for (int i = 0; i < days.size(); i++) {
            String day = days.get(i);
            progress.step(day, i, days.size());
            if (!damagedDays.contains(day)) {
                archive.day(day).ifPresent(this::checkFigures);
            }
        }
        return new Recomputation(days.size(), figures, faults.size(), differences);
    }

    private void checkFiles(Revision revision) {
        revision.files().forEach((path, file) -> {
            String fault = faults.computeIfAbsent(
                    file.sha256(), hash -> archive.content().fault(hash).orElse(""));
            if (!fault.isEmpty()) {
                damagedDays.add(revision.name());
                differences.add(new Difference(
                        revision.name() + " revision " + revision.number(), path, "content", file.sha256(), fault));
            }
        });
    }

    private void checkFigures(StoredDay stored) {
        try {
            compare(
                    stored.id(),
                    Archive.reducedOf(archive.reduceAnew(stored))
                            .map(reduced -> FigureRow.of(stored.id(), reduced))
                            .orElse(List.of()));
        } catch (RuntimeException failure) {
            differences.add(new Difference(
                    stored.id(), "every figure", "reduction", "figures", "the program failed: " + failure));
        }
    }

    private void compare(String day, List<FigureRow> recomputed) {
        var before = byKey(archive.figureTable().rows(day));
        var now = byKey(recomputed);
        figures += now.size();
        var keys = new TreeSet<>(before.keySet());
        keys.addAll(now.keySet());
        for (String key : keys) {
            var old = before.get(key);
            var fresh = now.get(key);
            if (old == null) {
                differences.add(new Difference(day, key, "figure", "nothing", "a figure"));
            } else if (fresh == null) {
                differences.add(new Difference(day, key, "figure", "a figure", "nothing"));
            } else if (!old.equals(fresh)) {
                compareRows(day, key, old, fresh);
            }
        }
    }

    private static Map<String, FigureRow> byKey(List<FigureRow> rows) {
        var byKey = new TreeMap<String, FigureRow>();
        rows.forEach(row -> byKey.put((row.figure() + " " + row.variant()).strip(), row));
        return byKey;
    }

    private void compareRows(String day, String key, FigureRow old, FigureRow fresh) {
        compareText(day, key, "column trial", old.trial() + " " + old.version(), fresh.trial() + " " + fresh.version());
        compareText(day, key, "column kind", old.kind(), fresh.kind());
        compareText(day, key, "column bike", old.bike(), fresh.bike());
        compareText(day, key, "column configuration", old.configuration(), fresh.configuration());
        compareText(day, key, "column date", old.date(), fresh.date());
        compareText(day, key, "column value", Double.toString(old.value()), Double.toString(fresh.value()));
        compareText(day, key, "column low", Double.toString(old.low()), Double.toString(fresh.low()));
        compareText(day, key, "column high", Double.toString(old.high()), Double.toString(fresh.high()));
        compareText(day, key, "column accepted", "" + old.accepted(), "" + fresh.accepted());
        if (!old.json().equals(fresh.json())) {
            compareJson(day, key, old.json(), fresh.json());
        }
    }

    private void compareText(String day, String key, String what, String old, String fresh) {
        if (!old.equals(fresh)) {
            differences.add(new Difference(day, key, what, old, fresh));
        }
    }

    private void compareJson(String day, String key, String old, String fresh) {
        try {
            int before = differences.size();
            compareNodes(day, key, "", Json.parse(old), Json.parse(fresh));
            if (differences.size() == before) {
                differences.add(new Difference(day, key, "JSON text", "other spacing or order of keys", "the usual"));
            }
        } catch (tools.jackson.core.JacksonException broken) {
            differences.add(new Difference(day, key, "JSON text", "no JSON any more", "a figure"));
        }
    }

    private void compareNodes(String day, String key, String path, JsonNode old, JsonNode fresh) {
        if (old.isObject() && fresh.isObject()) {
            var names = new TreeSet<>(old.propertyNames());
            names.addAll(fresh.propertyNames());
            names.forEach(name -> compareNodes(
                    day, key, path.isEmpty() ? name : path + "." + name, old.path(name), fresh.path(name)));
        } else if (old.isArray() && fresh.isArray() && old.size() == fresh.size()) {
            for (int i = 0; i < old.size(); i++) {
                compareNodes(day, key, path + "[" + i + "]", old.path(i), fresh.path(i));
            }
        } else if (!old.equals(fresh)) {
            differences.add(new Difference(day, key, path, text(old), text(fresh)));
        }
    }

    private static String text(JsonNode node) {
        return node.isMissingNode() ? "nothing" : Json.compact(node);
    }
}
