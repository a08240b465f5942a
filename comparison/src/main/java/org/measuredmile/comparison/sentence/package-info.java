/// Sentences: what can be said of a bike, written and spoken, with the numbers behind it.
///
/// Read in this order: [Sentence], [Sentences], [FigureSentence], [RankSentence], [ClaimSentence],
/// [ClassSentence]; then the voices [Writing] and
/// [Speech]; last [SentenceChange].
///
/// Each number is rounded once, from the unrounded; how a figure makes a sentence its trial declares
/// ([org.measuredmile.trial.Saying]).
///
/// May not know: the archive, files, clocks, pages.
/// Source: docs/sentences.md.
@NullMarked
package org.measuredmile.comparison.sentence;

import org.jspecify.annotations.NullMarked;
