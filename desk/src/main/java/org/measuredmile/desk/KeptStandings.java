package org.measuredmile.desk;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.function.Supplier;
import org.measuredmile.archive.Archive;
import org.measuredmile.comparison.standing.Entrant;
import org.measuredmile.comparison.standing.Population;
import org.measuredmile.comparison.standing.Standing;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.FigureSpec;

/// The standings of an archive, the last few kept as long as no figure and no ledger changes.
///
/// Shape: what is kept is dropped whole at the first question after a change, by whichever process. Safe for use by
/// several threads; two that ask for the same at once may both compute it.
public final class KeptStandings {
    private static final int MOST_KEPT = 48;

    private final Archive archive;
    private final Map<Object, Object> kept = new LinkedHashMap<>(16, 0.75f, true);
    private String state = "";

    private record Bikes() {}

    private record Results(String figure) {}

    private record Question(String figure, Variant variant, Population population) {}

    private record Rival(Question question, String bike) {}

    public KeptStandings(Archive archive) {
        this.archive = archive;
    }

    /// Every bike with its specification, by id.
    @SuppressWarnings("unchecked") // put under its own key type below
    public SortedMap<String, Bike> bikes() {
        return (SortedMap<String, Bike>) get(new Bikes(), archive::described);
    }

    /// Every result of a figure that may stand, those of the ledger with them.
    @SuppressWarnings("unchecked") // put under its own key type below
    public List<Entrant> entrants(FigureSpec figure) {
        return (List<Entrant>) get(new Results(figure.id()), () -> Entrants.of(archive, figure, bikes()));
    }

    public Standing standing(FigureSpec figure, Variant variant, Population population) {
        return (Standing) get(
                new Question(figure.id(), variant, population),
                () -> Standing.of(figure, variant, population, entrants(figure), Machine.PROCESSORS));
    }

    /// The probability that each bike of a standing is better than one of them, by bike.
    @SuppressWarnings("unchecked") // put under its own key type below
    public SortedMap<String, Double> chancesOfBeating(Standing standing, String bike) {
        var question = new Question(standing.figure().id(), standing.variant(), standing.population());
        return (SortedMap<String, Double>) get(new Rival(question, bike), () -> standing.chancesOfBeating(bike));
    }

    /// Something else that is made of figures alone, by a key that says all it depends on beside them.
    ///
    /// Shape: a key of a type of its own, always with the same type of thing.
    @SuppressWarnings("unchecked") // by the rule above
    public <T> T whatIsMade(Record key, Supplier<T> make) {
        return (T) get(key, make);
    }

    private Object get(Object key, Supplier<?> make) {
        String now = archive.stateOfFigures();
        synchronized (kept) {
            if (!now.equals(state)) {
                kept.clear();
                state = now;
            }
            var known = kept.get(key);
            if (known != null) {
                return known;
            }
        }
        Object made = Objects.requireNonNull(make.get());
        synchronized (kept) {
            if (now.equals(state)) {
                kept.put(key, made);
            }
            if (kept.size() > MOST_KEPT) {
                kept.remove(kept.keySet().iterator().next());
            }
        }
        return made;
    }
}
