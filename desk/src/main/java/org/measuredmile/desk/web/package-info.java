/// The crew's web app: pages rendered on the server, forms that work without script, nothing kept between requests but
/// two cookies (who is writing, which units stand first).
///
/// Read in this order: [Web], [WebApplication], [Security], [Frame], [Pages], then one class a place: [FleetPages],
/// [BikePages], [DayPages], [ReadingsPages], [RunPages], [StandingPages], [HandbookPages], [HistoryPages]. What a page
/// shows is made in `view`, what a form changes in `edit`; both are free of the framework.
///
/// May not know: the command line, and any trial by name.
@NullMarked
package org.measuredmile.desk.web;

import org.jspecify.annotations.NullMarked;
