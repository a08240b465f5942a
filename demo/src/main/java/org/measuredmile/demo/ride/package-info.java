/// Rides of which the truth is known, and the instruments that look at them.
///
/// Read in this order: [TrueRide], [RoadLine], [ReceiverModel], [ReceiverLog]; then [SimulatedTrial], [SimulatedDay];
/// for stops [BrakedBike], [BrakedStop], [BrakingSession]. A ride is a speed at every hundredth of
/// a second; a receiver filters, delays, blurs and rounds it; a log is the bytes that a logger would write.
///
/// May not know: trials and their formulas, so that both cannot be wrong in the same way.
@NullMarked
package org.measuredmile.demo.ride;

import org.jspecify.annotations.NullMarked;
