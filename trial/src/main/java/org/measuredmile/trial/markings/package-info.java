/// What the bike itself says: its class label, the plate of its battery, the sidewall of its tyres, its certificates.
///
/// Read: [Markings], the whole trial. Its readings belong to the day, not to a run; its only findings are about what
/// was
/// read, and the sentence that nothing was certified. What they are held against, the package comparison.spec knows.
/// May not know: other trials.
@NullMarked
package org.measuredmile.trial.markings;

import org.jspecify.annotations.NullMarked;
