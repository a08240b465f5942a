package org.measuredmile.desk.web;

import org.measuredmile.archive.Archive;
import org.measuredmile.desk.KeptStandings;
import org.measuredmile.quantity.UnitSystem;

/// What the pages work on: the crew's archive, whether it is the invented one, the system that stands first until
/// somebody chooses, and the archive's standings.
record Desk(Archive archive, boolean demo, UnitSystem usual, KeptStandings standings) {
    Desk(Archive archive, boolean demo, UnitSystem usual) {
        this(archive, demo, usual, new KeptStandings(archive));
    }
}
