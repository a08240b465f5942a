package org.measuredmile.demo.ride;

import org.measuredmile.quantity.statistics.Seed;

/// A trial whose days can be simulated from known truth.
public interface SimulatedTrial {
    /// What is simulated, in words.
    String title();

    /// One day of its own: a bike, an instrument, a crew and a weather drawn from the stated population.
    ///
    /// Shape: the same seed and index give the same day, whatever else was asked for.
    SimulatedDay day(Seed seed, long index);
}
