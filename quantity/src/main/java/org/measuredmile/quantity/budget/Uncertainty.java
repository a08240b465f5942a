package org.measuredmile.quantity.budget;

import org.measuredmile.quantity.Interval;

/// How well a figure is known: standard uncertainty, its degrees of freedom, and the 95 % interval.
///
/// Unit: the SI unit of the figure. The interval need not be symmetric about the value.
public record Uncertainty(double standard, double degreesOfFreedom, Interval interval95) {}
