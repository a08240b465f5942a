package org.measuredmile.trial;

import java.util.List;
import org.measuredmile.quantity.QuantityKind;

/// A figure that the trial delivers.
///
/// Shape: `id` is `trial.figure`; `variantKeys` are the keys, in order, by which figures of this id differ; `words` are
/// what people call it in prose, `saying` how it makes a sentence. `primary` marks the figure that speaks for the trial
/// on a summary line.
/// `comparable` says whether figures of different trial versions may be ranked together.
public record FigureSpec(
        String id,
        String title,
        QuantityKind kind,
        Better better,
        Chapter chapter,
        List<String> variantKeys,
        boolean primary,
        boolean comparable,
        Scatter prior,
        List<String> words,
        String meaning,
        Saying saying) {
    public FigureSpec {
        variantKeys = List.copyOf(variantKeys);
        words = List.copyOf(words);
    }

    /// A figure whose title and variant make its sentence.
    public FigureSpec(
            String id,
            String title,
            QuantityKind kind,
            Better better,
            Chapter chapter,
            List<String> variantKeys,
            boolean primary,
            boolean comparable,
            Scatter prior,
            List<String> words,
            String meaning) {
        this(id, title, kind, better, chapter, variantKeys, primary, comparable, prior, words, meaning, Saying.NONE);
    }

    /// A figure that is not the primary one and is comparable between versions.
    public static FigureSpec of(String id, String title, QuantityKind kind, Better better, Chapter chapter) {
        return new FigureSpec(
                id,
                title,
                kind,
                better,
                chapter,
                List.of(),
                false,
                true,
                new Scatter(0, Double.POSITIVE_INFINITY, 0, Double.POSITIVE_INFINITY, false),
                List.of(),
                "",
                Saying.NONE);
    }

    /// The id without the trial's: `mass` of `weighin.mass`.
    public String name() {
        return id.substring(id.indexOf('.') + 1);
    }

    public FigureSpec by(String... keys) {
        return new FigureSpec(
                id, title, kind, better, chapter, List.of(keys), primary, comparable, prior, words, meaning, saying);
    }

    public FigureSpec speaksForTheTrial() {
        return new FigureSpec(
                id, title, kind, better, chapter, variantKeys, true, comparable, prior, words, meaning, saying);
    }

    public FigureSpec scatter(Scatter stated) {
        return new FigureSpec(
                id, title, kind, better, chapter, variantKeys, primary, comparable, stated, words, meaning, saying);
    }

    public FigureSpec called(String... inProse) {
        return new FigureSpec(
                id,
                title,
                kind,
                better,
                chapter,
                variantKeys,
                primary,
                comparable,
                prior,
                List.of(inProse),
                meaning,
                saying);
    }

    public FigureSpec meaning(String sentence) {
        return new FigureSpec(
                id, title, kind, better, chapter, variantKeys, primary, comparable, prior, words, sentence, saying);
    }

    /// The same, said so in sentences.
    public FigureSpec says(Saying said) {
        return new FigureSpec(
                id, title, kind, better, chapter, variantKeys, primary, comparable, prior, words, meaning, said);
    }
}
