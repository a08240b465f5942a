package org.measuredmile.comparison.spec;

import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Better;

/// An item that a specification speaks of: what it is, where on the bike, and what can be held against it.
///
/// Shape: `id` is what spec.csv calls it; `marking` is the reading of the trial markings that says the same of the
/// bike itself, empty where none does. Items are declared in [SpecItems#ALL], front to back.
public record SpecItem(
        String id,
        String words,
        Part part,
        QuantityKind kind,
        Better better,
        Optional<Measure> measure,
        Optional<Band> band,
        String marking,
        String example) {
    /// Where on the bike, front to back, and then the whole of it.
    public enum Part {
        FRONT("Front wheel and fork"),
        COCKPIT("Handlebar"),
        FRAME("Frame and rider"),
        BATTERY("Battery"),
        DRIVE("Motor and gears"),
        REAR("Rear wheel"),
        WHOLE("The whole bike"),
        ROAD("On the road"),
        PAPERS("Papers"),
        OTHER("Other");

        private final String title;

        Part(String title) {
            this.title = title;
        }

        public String title() {
            return title;
        }
    }

    /// The values that such a thing has on the bikes that are sold; outside of it a line is looked at again.
    ///
    /// Unit: `lowSi` and `highSi` in the SI unit of the item's kind, closed; `unit` is the one that people use.
    public record Band(double lowSi, double highSi, Unit unit, String source) {
        boolean holds(double si) {
            return si >= lowSi && si <= highSi;
        }

        String words() {
            return SpecText.plain(lowSi, unit) + " to " + SpecText.plain(highSi, unit);
        }
    }

    /// The figure that measures the item, and how a claim's conditions choose its variant.
    ///
    /// Shape: `usual` holds the keys that the figure's variant must have; `byCondition` says, for a condition's
    /// `key=value`, which key and value of the variant it stands for.
    public record Measure(String figure, Variant usual, Map<String, Variant> byCondition) {
        public Measure {
            byCondition = Map.copyOf(byCondition);
        }

        /// The keys that a figure's variant must have under a claim's conditions.
        public Variant variant(Map<String, String> conditions) {
            Variant wanted = usual;
            for (var condition : conditions.entrySet()) {
                Variant more = byCondition.getOrDefault(condition.getKey() + "=" + condition.getValue(), Variant.NONE);
                for (var key : more.values().entrySet()) {
                    wanted = wanted.with(key.getKey(), key.getValue());
                }
            }
            return wanted;
        }

        /// The latest accepted result, as it was measured, under a claim's conditions.
        public Optional<TestedBike.Result> of(TestedBike bike, Map<String, String> conditions) {
            Variant wanted = variant(conditions);
            return bike.of(figure).stream()
                    .filter(result -> result.figure().key().variant().covers(wanted))
                    .filter(result -> result.figure().key().variant().get("at").isEmpty())
                    .min(Comparator.comparing(TestedBike.Result::date)
                            .reversed()
                            .thenComparing(result ->
                                    result.figure().key().variant().values().size())
                            .thenComparing(result -> result.figure().key()));
        }
    }

    static SpecItem of(Part part, String id, String words, QuantityKind kind) {
        return new SpecItem(id, words, part, kind, Better.NEITHER, Optional.empty(), Optional.empty(), "", "");
    }

    /// Which way a measured value is better for the rider: the claim is only contradicted the other way.
    SpecItem better(Better way) {
        return new SpecItem(id, words, part, kind, way, measure, band, marking, example);
    }

    SpecItem measuredBy(String figure, Variant usual, Map<String, Variant> byCondition) {
        var by = Optional.of(new Measure(figure, usual, byCondition));
        return new SpecItem(id, words, part, kind, better, by, band, marking, example);
    }

    SpecItem from(double low, double high, Unit unit) {
        var common = Optional.of(new Band(unit.toSi(low), unit.toSi(high), unit, SpecItems.COMMON));
        return new SpecItem(id, words, part, kind, better, measure, common, marking, example);
    }

    /// Said by the bike itself, in a reading of the trial markings.
    SpecItem marked(String reading) {
        return new SpecItem(id, words, part, kind, better, measure, band, reading, example);
    }

    SpecItem like(String text) {
        return new SpecItem(id, words, part, kind, better, measure, band, marking, text);
    }

    /// Whether its claims are words and no quantities.
    public boolean isWords() {
        return kind == QuantityKind.WORD;
    }
}
