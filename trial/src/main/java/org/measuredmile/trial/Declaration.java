package org.measuredmile.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.measuredmile.recording.day.Variant;

/// All that a trial declares. Everything people see of a trial follows from it.
///
/// Shape: lists in the order they are shown in. Build one with [#of(String, int, String)].
public record Declaration(
        String id,
        int version,
        String title,
        String purpose,
        List<String> cautions,
        String follows,
        boolean needsPreRideCheck,
        List<Cause> causes,
        List<VariantKey> variants,
        RunPlan runs,
        List<ReadingSpec> readings,
        List<RecordingSpec> recordings,
        List<Limit> limits,
        List<Use> uses,
        List<FigureSpec> figures,
        Handbook handbook) {

    public Optional<FigureSpec> figure(String figureId) {
        return figures.stream().filter(one -> one.id().equals(figureId)).findFirst();
    }

    /// The declared figure of an id that must be there.
    ///
    /// Error: IllegalArgumentException when the trial does not declare it.
    public FigureSpec requireFigure(String figureId) {
        return figure(figureId).orElseThrow(() -> new IllegalArgumentException(id + " declares no " + figureId));
    }

    /// Whether it has no runs: its readings are taken once a day, and no figure comes of them.
    public boolean isReadOnce() {
        return runs.equals(RunPlan.NONE);
    }

    public Optional<ReadingSpec> reading(String name) {
        return readings.stream().filter(one -> one.name().equals(name)).findFirst();
    }

    public Optional<VariantKey> variant(String key) {
        return variants.stream().filter(one -> one.name().equals(key)).findFirst();
    }

    /// What people call a variant: `from 20 mph, in the dry`.
    ///
    /// Shape: in the order of the keys, those the trial does not declare last; what two keys say
    /// alike is said once.
    public String words(Variant variant) {
        var declared = variants.stream()
                .filter(key -> variant.get(key.name())
                        .filter(value -> !isSaidByAnother(key, value, variant))
                        .isPresent())
                .map(key -> key.words(variant.get(key.name()).orElseThrow()));
        var others = variant.values().entrySet().stream()
                .filter(entry -> variant(entry.getKey()).isEmpty())
                .map(entry -> entry.getKey().replace('-', ' ') + " " + entry.getValue());
        String words =
                Stream.concat(declared, others).filter(one -> !one.isBlank()).collect(Collectors.joining(", "));
        return words.isEmpty() ? variant.text() : words;
    }

    /// A key of any value, or one the trial fills in, is silent beside one that says the same.
    private boolean isSaidByAnother(VariantKey key, String value, Variant variant) {
        return variants.stream()
                .filter(other -> !other.equals(key) && other.names(value) && variant.has(other.name(), value))
                .anyMatch(other -> key.values().isEmpty() || (!key.asked() && other.asked()));
    }

    public static Builder of(String id, int version, String title) {
        return new Builder(id, version, title);
    }

    /// Collects a declaration in the order a reader wants it.
    public static final class Builder {
        private final String id;
        private final int version;
        private final String title;
        private String purpose = "";
        private final List<String> cautions = new ArrayList<>();
        private String follows = "common practice, no source";
        private boolean needsPreRideCheck;
        private final List<Cause> causes = new ArrayList<>();
        private final List<VariantKey> variants = new ArrayList<>();
        private RunPlan runs = new RunPlan(1, 1, false);
        private final List<ReadingSpec> readings = new ArrayList<>();
        private final List<RecordingSpec> recordings = new ArrayList<>();
        private final List<Limit> limits = new ArrayList<>();
        private final List<Use> uses = new ArrayList<>();
        private final List<FigureSpec> figures = new ArrayList<>();

        private Builder(String id, int version, String title) {
            this.id = id;
            this.version = version;
            this.title = title;
        }

        public Builder purpose(String sentence) {
            purpose = sentence;
            return this;
        }

        public Builder caution(String sentence) {
            cautions.add(sentence);
            return this;
        }

        public Builder follows(String standardOrPractice) {
            follows = standardOrPractice;
            return this;
        }

        public Builder onlyAfterPreRideCheck() {
            needsPreRideCheck = true;
            return this;
        }

        public Builder voidWhen(String code, String words) {
            causes.add(new Cause(code, words));
            return this;
        }

        public Builder variant(VariantKey key) {
            variants.add(key);
            return this;
        }

        public Builder runs(int usual, int least, boolean bothDirections) {
            runs = new RunPlan(usual, least, bothDirections);
            return this;
        }

        /// Nothing is ridden: readings of the day only, and no figures.
        public Builder readOnceADay() {
            runs = RunPlan.NONE;
            return this;
        }

        public Builder reading(ReadingSpec spec) {
            readings.add(spec);
            return this;
        }

        public Builder recording(RecordingSpec spec) {
            recordings.add(spec);
            return this;
        }

        public Builder limit(Limit limit) {
            limits.add(limit);
            return this;
        }

        public Builder uses(String figure, String standIn) {
            uses.add(new Use(figure, standIn));
            return this;
        }

        public Builder figure(FigureSpec spec) {
            figures.add(spec);
            return this;
        }

        public Builder figures(FigureSpec... specs) {
            figures.addAll(List.of(specs));
            return this;
        }

        /// How a figure that stands in it already is said in a sentence.
        public Builder says(String figure, String sentence) {
            figures.replaceAll(one -> one.name().equals(figure) ? one.says(Saying.of(sentence, "")) : one);
            return this;
        }

        /// The finished declaration, with its handbook page.
        public Declaration handbook(Handbook handbook) {
            return new Declaration(
                    id,
                    version,
                    title,
                    purpose,
                    List.copyOf(cautions),
                    follows,
                    needsPreRideCheck,
                    List.copyOf(causes),
                    List.copyOf(variants),
                    runs,
                    List.copyOf(readings),
                    List.copyOf(recordings),
                    List.copyOf(limits),
                    List.copyOf(uses),
                    List.copyOf(figures),
                    handbook);
        }
    }
}
