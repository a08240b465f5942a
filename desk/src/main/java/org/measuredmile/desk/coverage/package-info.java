/// How often the intervals hold the truth: simulated days through the same reduction that a crew's own days take.
///
/// Read in this order: [CoverageStudy], [Coverage], [CoverageTable].
///
/// May not know: the web, the archive, any trial by name.
@NullMarked
package org.measuredmile.desk.coverage;

import org.jspecify.annotations.NullMarked;
