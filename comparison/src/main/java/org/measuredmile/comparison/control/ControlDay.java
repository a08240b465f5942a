package org.measuredmile.comparison.control;

import java.time.LocalDate;
import org.measuredmile.quantity.budget.Uncertainty;

/// A day on which the control bike was ridden, and what it gave.
///
/// Unit: the SI unit of the figure.
/// Shape: `tester` is a code, or several joined by a plus; `thisDay` covers that day's runs alone.
public record ControlDay(
        String day, LocalDate date, String tester, String configuration, double value, Uncertainty thisDay) {}
