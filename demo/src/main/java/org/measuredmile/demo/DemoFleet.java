package org.measuredmile.demo;

import java.util.List;
import org.measuredmile.recording.day.DayFolder;

/// The invented fleet as files: test-day folders and a ledger of earlier years, made from a seed.
///
/// Shape: the same seed gives the same bytes. Everything in them is invented and says so; nothing in them
/// is computed by the trials.
public final class DemoFleet {
    /// The seed that `mile demo` uses.
    public static final long SEED = 20310303;

    /// The bike that is stopped again on many days.
    public static final String CONTROL_BIKE = ControlRides.BIKE;

    private DemoFleet() {}

    /// Every test day, in order of date.
    public static List<DayFolder> days(long seed) {
        return FleetDays.of(seed);
    }

    /// Results of earlier years, without recordings, in the ledger's own columns.
    public static byte[] ledger() {
        return LedgerOfEarlierYears.bytes();
    }

    /// What each bike really is, in the order of the fleet.
    public static List<BikeTruth> truth() {
        return Fleet.members().stream().map(Fleet.Member::truth).toList();
    }
}
