package org.measuredmile.trial.engagement;

import java.util.List;
import org.measuredmile.trial.Handbook;

/// The trial's page in the method handbook.
final class EngagementHandbook {
    static final Handbook PAGE = new Handbook(
            "The time and the crank angle from the first pedal movement until the motor's thrust begins, and the time"
                    + " and the way from the last pedal movement until it is gone, at one assist level.",
            "a(t) = a₀ + B·min(1, (t − t_c)/p) + A·min(1, (t − τ)/r), each ramp 0 before it begins; delay = τ − t_c;"
                    + " crank angle = 2π·∫ n dt from t_c to τ; overrun = τ + r − t_c; overrun distance = ∫ v"
                    + " dt over it.",
            List.of(
                    "Roll at walking pace with the cranks still for a second or more, pedal lightly for three"
                            + " turns, stop"
                            + " the cranks, roll on. Five times at a level.",
                    "By recording: the cranks' first and last movement lie half a sample from the sample that"
                            + " shows them."
                            + " The change of thrust is fitted to the raw acceleration from 0.8 s before to 3"
                            + " s after,"
                            + " with a step p of 0.15 s for the rider's own push.",
                    "Every begin on a grid of 10 ms and every ramp from 0.02 to 0.55 s is weighed by its"
                            + " likelihood; the mean"
                            + " and 1.15 times the spread of that are the result. A change under 0.12 m/s², or"
                            + " one that does not stand out of the noise six times, is refused.",
                    "By video: count frames; a variable frame rate is refused. By a watch each run is good to"
                            + " 0.10 s.",
                    "The overrun's distance is the speed's integral over it, or, from a speed read when the"
                            + " cranks stopped, v·t + ½·a·t² with 0.75 ± 0.25 m/s² for what the push adds. Its"
                            + " scatter is that of the time, at the speed of these runs.",
                    "The mean of the runs is the figure, with a moderated scatter."),
            List.of(
                    "Broken lines by their profile: Seber and Wild, Nonlinear Regression (1989), chapter 9,"
                            + " from memory.",
                    "Scatter, limits and ramps: house values, no published source."),
            "24, 27 and 23 frames of a video of 60 a second are 0.400, 0.450 and 0.383 s: mean 0.411 s.",
            "The angle depends on where the cranks stood: a sensor with few marks answers within a third of a turn of"
                    + " luck. Five runs average that; three do not. Torque sensors need a foot's pressure, so"
                    + " push the"
                    + " same way each time.");

    private EngagementHandbook() {}
}
