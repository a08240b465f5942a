/// What is known of a bike when it is judged: its folder and the figures that stand.
///
/// Read in this order: [TestedBike]; then the packages standing, spec, verdict, legal and sentence.
///
/// May not know: the archive, files, clocks, pages.
@NullMarked
package org.measuredmile.comparison;

import org.jspecify.annotations.NullMarked;
