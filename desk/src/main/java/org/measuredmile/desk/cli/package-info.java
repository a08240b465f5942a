/// The command line `mile`: each command reads its arguments, asks the inner modules, and prints.
///
/// Read in this order: [Mile], [Shown], [Chosen], then the commands.
///
/// May not know: the web app, but through [org.measuredmile.desk.WebDoor].
@NullMarked
package org.measuredmile.desk.cli;

import org.jspecify.annotations.NullMarked;
