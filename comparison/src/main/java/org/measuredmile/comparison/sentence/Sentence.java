package org.measuredmile.comparison.sentence;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.trial.Chapter;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.Sha256;

/// Something that can be said of a bike as it stands, written and spoken, with the numbers behind it.
///
/// Shape: `id` stays the same as long as it is about the same thing; [#hash] changes with what it says, in either
/// system of units. `about` is that thing in words.
public record Sentence(
        String id,
        Kind kind,
        String bike,
        Chapter chapter,
        String about,
        Wording metric,
        Wording imperial,
        Behind behind,
        Basis basis) {
    private static final int HASH_SIGNS = 8;

    /// What a sentence tells.
    public enum Kind {
        FIGURE("figure", "Figure"),
        RANK("rank", "Rank"),
        CLAIM("claim", "Verdict on a claim"),
        CLASS("class", "Legal class");

        private final String id;
        private final String title;

        Kind(String id, String title) {
            this.id = id;
            this.title = title;
        }

        public String id() {
            return id;
        }

        public String title() {
            return title;
        }
    }

    /// The two forms of a sentence in one system of units.
    public record Wording(String written, String spoken) {}

    /// The numbers behind a sentence, each unrounded.
    ///
    /// Unit: value and any-day interval in the SI unit of `quantity`.
    /// Shape: `runs` is how many count, 0 where there are none; `population` is an expression, `bikes` how many
    /// stand in it, 0 for a sentence about no population; `remarks` are further words, what was assumed among them.
    public record Behind(
            Optional<FigureKey> figure,
            QuantityKind quantity,
            OptionalDouble value,
            Optional<Interval> interval95,
            long runs,
            Optional<String> population,
            int bikes,
            Optional<LocalDate> date,
            String day,
            List<String> remarks) {
        public Behind {
            remarks = List.copyOf(remarks);
        }
    }

    /// What a sentence rests on, in three parts, so that a change can be told by its cause.
    public record Basis(String method, String figure, String population) {}

    /// The id of a sentence: bike, what it is about, kind and population, parted by slashes.
    static String id(String bike, FigureKey about, String kind) {
        String variant = about.variant().text().replace(' ', ',');
        return bike + "/" + about.figure() + (variant.isEmpty() ? "" : "/" + variant) + "/" + kind;
    }

    public Wording in(UnitSystem system) {
        return system == UnitSystem.METRIC ? metric : imperial;
    }

    /// The first signs of the hash of all that it says.
    public String hash() {
        String all = String.join("\n", metric.written, metric.spoken, imperial.written, imperial.spoken);
        return Sha256.of(all.getBytes(StandardCharsets.UTF_8)).substring(0, HASH_SIGNS);
    }

    /// Id and hash, to be put beside a quotation, so that an outdated one is recognised.
    public String reference() {
        return id + "#" + hash();
    }
}
