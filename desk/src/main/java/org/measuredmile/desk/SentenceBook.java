package org.measuredmile.desk;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.archive.Archive;
import org.measuredmile.comparison.sentence.Sentence;
import org.measuredmile.comparison.sentence.Sentences;
import org.measuredmile.comparison.standing.Entrant;
import org.measuredmile.comparison.standing.Population;
import org.measuredmile.comparison.standing.Standing;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.FigureSpec;

/// The sentences of an archive's bikes. Standings that were asked for are remembered by all that they are made of, so
/// that the next page that needs one finds it.
///
/// Shape: safe for several threads; what is remembered never decides what is said.
public final class SentenceBook {
    private static final int REMEMBERED = 2_000;

    private final Archive archive;
    private final Map<Question, Standing> remembered = new LinkedHashMap<>(16, 0.75f, true);

    public SentenceBook(Archive archive) {
        this.archive = archive;
    }

    private record Question(String figure, Variant variant, Population population, List<Entrant> entrants) {}

    /// The sentences of a bike; empty when the archive has no test day of it.
    public Optional<List<Sentence>> of(String bike) {
        return BikeClaims.of(archive, bike)
                .map(claims -> Sentences.of(claims.bike(), claims.verdicts(), new Asked()::standing));
    }

    /// The sentences of every bike, by bike.
    public List<Sentence> all() {
        var asked = new Asked();
        return archive.described().keySet().stream()
                .flatMap(bike -> BikeClaims.of(archive, bike).stream())
                .flatMap(claims -> Sentences.of(claims.bike(), claims.verdicts(), asked::standing).stream())
                .toList();
    }

    /// One reading of the archive: each figure's entrants are fetched once.
    private final class Asked {
        private final Map<String, List<Entrant>> entrants = new HashMap<>();

        Standing standing(FigureSpec figure, Variant variant, Population population) {
            var alike = entrants.computeIfAbsent(figure.id(), id -> Entrants.of(archive, figure, false)).stream()
                    .filter(entrant -> entrant.variant().equals(variant))
                    .toList();
            var question = new Question(figure.id(), variant, population, alike);
            var known = remembered(question);
            if (known.isPresent()) {
                return known.get();
            }
            var standing = Standing.of(figure, variant, population, alike);
            remember(question, standing);
            return standing;
        }
    }

    private Optional<Standing> remembered(Question question) {
        synchronized (remembered) {
            return Optional.ofNullable(remembered.get(question));
        }
    }

    private void remember(Question question, Standing standing) {
        synchronized (remembered) {
            remembered.put(question, standing);
            if (remembered.size() > REMEMBERED) {
                remembered.remove(remembered.keySet().iterator().next());
            }
        }
    }
}
