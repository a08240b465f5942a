/// The product's JSON, as docs/formats/json.md gives it: keys in a fixed order, SI units, every digit, and the same
/// bytes under any locale and time zone.
///
/// Read in this order: [Json], [FindingJson], [FigureJson].
@NullMarked
package org.measuredmile.archive.json;

import org.jspecify.annotations.NullMarked;
