package org.measuredmile.comparison.control;

import java.time.LocalDate;

/// One run's value, with the bike, the day and the tester.
///
/// Unit: the SI unit of the figure. Shape: `tester` is a code.
public record Observation(String bike, LocalDate date, String tester, double value) {}
