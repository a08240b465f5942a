/// How fast recordings are read and test days reduced, beside what others do with the same bytes in the same run.
///
/// Nothing here ships: it is compiled with everything else so that it does not rot, and run by `./benchmark/run`.
@NullMarked
package org.measuredmile.benchmark;

import org.jspecify.annotations.NullMarked;
