package org.measuredmile.desk.web;

import org.measuredmile.archive.Archive;
import org.measuredmile.quantity.UnitSystem;

/// What the pages work on: the crew's archive, whether it is the invented one, and the system that stands first until
/// somebody chooses.
record Desk(Archive archive, boolean demo, UnitSystem usual) {}
