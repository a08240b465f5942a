/// Who may know whom, what the inner modules may call, and how the source is written.
///
/// Read in this order: [ModuleArrowsTest], [PurityTest], [TrialHouseTest], [TidinessTest], [TidinessRulesTest].
/// Rules about compiled classes guard on how many classes they saw; rules about source text print
/// `path:line: what is wrong; what to do`. Exceptions stand by name, with their reason, in `exceptions.txt`.
@NullMarked
package org.measuredmile.rules;

import org.jspecify.annotations.NullMarked;
