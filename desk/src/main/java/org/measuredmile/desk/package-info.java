/// The desk: the command line and the crew's web app, and the one door between them.
///
/// Read in this order: [WebDoor], then `cli`, then `web`.
@NullMarked
package org.measuredmile.desk;

import org.jspecify.annotations.NullMarked;
