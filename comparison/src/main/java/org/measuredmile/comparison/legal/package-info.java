/// Legal classes: what was measured, and what a bike says of itself, beside what texts of law and product standards
/// ask.
///
/// Read in this order: [LegalClass] and [LegalRule] (the data, in rules.yaml), [LegalRules], [LegalLimit] and [Beside]
/// (one number beside one limit), [Evidence] (what is known of a bike), [MotorAlone], [ClassOutcome],
/// [LegalClasses] (the whole), [LabelFindings].
///
/// May not know: the archive, files, clocks, pages. It decides nothing about what is lawful where:
/// [LegalClasses#CAUTION]
/// goes wherever an outcome goes.
/// Source: each class names its own text; the decision follows JCGM 106:2012, 8.3.3 (guarded rejection).
@NullMarked
package org.measuredmile.comparison.legal;

import org.jspecify.annotations.NullMarked;
