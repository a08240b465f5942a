package org.measuredmile.comparison.verdict;

import org.measuredmile.comparison.TestedBike;

/// Another configuration of the bike, or another way of measuring it, whose result the claimed value fits.
public record Agreement(TestedBike.Result result) {}
