/// An invented fleet: a town, makers, bikes and a crew that do not exist, and the test days they would have ridden.
///
/// Read in this order: [DemoFleet], [Fleet], [Town], [Makers], [FleetDays], [LedgerOfEarlierYears]. Every bike has a
/// truth; its days hold only what instruments and people would have written down, and are worked out like any others.
///
/// May not know: trials, figures, where files lie. Nothing here is a result.
@NullMarked
package org.measuredmile.demo;

import org.jspecify.annotations.NullMarked;
