package org.measuredmile.trial.assistspeed;

import java.util.List;
import org.measuredmile.trial.Handbook;

/// The trial's page in the method handbook.
final class AssistSpeedHandbook {
    static final Handbook PAGE = new Handbook(
            "The speed at which the bike settles on level road, at one assist level, with a light and steady effort of "
                    + "about 75 W at the pedals (none by throttle): the mean of both directions, each the mean over at "
                    + "least 8 s of steady riding. As measured it is that of the rider and air there were, with "
                    + "the wind that somebody wrote down taken out and the rest of it in the interval; at reference "
                    + "rider and air are taken out too.",
            "v = mean over directions of Σᵢ wᵢ·mᵢ, with mᵢ the generalised least-squares mean of the stretch for "
                    + "the i-th "
                    + "memory of the wander and wᵢ its weight; u² = wander² + wind² + scale² (this day) + effort² + "
                    + "between days² (any day)",
            List.of(
                    "The speed channel is averaged over whole seconds; a second with fewer than half of its samples is "
                            + "missing and stays missing. A fall from riding speed to nothing within a second is a "
                            + "sensor's drop-out, not a stop.",
                    "Several runs in one recording are its levels in the order of runs.csv. The trace is divided into "
                            + "that many plateaus of at least 8 s, with straight transitions of 2 to 10 s between them "
                            + "and the riding to and from a stop left out, so that the least is left unexplained "
                            + "(an exact programme). When another number of levels explains the trace better, that is "
                            + "proposed and nothing is changed. An order that is not one of rising speed is shown as "
                            + "it is.",
                    "One run in a recording means one level all along. The ride is divided by optimal segmentation "
                            + "into pieces of one speed, with a penalty of 2·ln n·σ²·τ a change (σ 0.15 m/s, τ 8 s), "
                            + "neighbours closer than 0.25 m/s joined; every piece that counts belongs to the level. "
                            + "Its speed is their mean, each weighed by the seconds it held; the uncertainty is the "
                            + "larger of what their wander gives and what their scatter gives, with J − 1 degrees of "
                            + "freedom for J pieces. It is the steady speed of that ride, traffic included.",
                    "A recording of nobody's run is divided in the same way, and its pieces are proposed as runs.",
                    "A piece counts after 1 s is cut from each end when it holds for 8 s between gaps of at most 2 s, "
                            + "slopes by at most 0.05 m/s², scatters by at most 0.6 m/s, and is faster than 2 m/s.",
                    "Speeds a second apart are alike, and how long they stay alike is not known: the mean and its 95 % "
                            + "half-width are those of a mixture over memories from 2 to 32 s (prior: log-normal, "
                            + "median 14 s, 0.6 in ln τ) and four shares of white noise, with the variance pooled over "
                            + "all levels of the recording.",
                    "A wind that was written down is taken out by a usual road load of the day's mass and "
                            + "air: the power that gives the mean speed measured against the head wind of each "
                            + "way, and the speed of that power in still air. Where its bearing is known the head "
                            + "wind is w·cos φ; of two ways of unknown bearing it is ± w/√2, so that only what wind "
                            + "takes more than it gives back is taken out. A speed within 3 % of the noted cut-off "
                            + "is left alone.",
                    "What is left: a one-way ride in a wind of unknown bearing carries the answer of a usual road "
                            + "load to it, in the proportion in which "
                            + "the ride went one way (its headings come from positions; without them, all of it), "
                            + "and as its bearing is unknown that part is v′·w·cos φ with φ uniform, convolved with "
                            + "the rest. Each way's wind differs by 30 % from the day's, and two ways leave something "
                            + "above the calm speed. "
                            + "Wind that nobody wrote down counts as 2 m/s. Above 3 m/s no run counts.",
                    "The rider's effort (75 ± 10 W unrecorded, ± 3 W recorded) is in the any-day interval, unless the "
                            + "scatter record states the day-to-day scatter, which then holds it.",
                    "At reference: the power at the wheel, P = v·F(v, w), that gives the mean speed measured against "
                            + "the head wind of each way, and the speed v(P, 0) of the reference rider in the "
                            + "reference air on the level. Load by the day's coast-down, else by what is usual; head "
                            + "wind from its bearing and the ways' headings where both are known, else ± w/√2 for "
                            + "two ways and nothing, with the whole of it in the interval, for one. What the masses, "
                            + "the load and the air leave open of the correction is in the budget.",
                    "A speed within 3 % of the noted cut-off is held by the controller: nothing is corrected, and "
                            + "the finding speed-governed says so. From there to 6 %, and where no cut-off was "
                            + "noted, half the correction is in the budget. With the motor off nothing can be cut off.",
                    "A typed speed stands where there is no recording; a display is taken to be right within its step, "
                            + "rectangular, and its scale within 2 % unless calibrated.",
                    "The gain over the level below is real when it exceeds √(h₁² + h₂²) of the two half-widths by "
                            + "wander; else the two cannot be told apart.",
                    "A cut-off speed is given only where the speed at which assistance fades was written down: a "
                            + "pedalled top speed is not a cut-off."),
            List.of(
                    "Programme, penalties, mixture and prior: studied by this project on simulated rides; see "
                            + "docs/coverage.md for how often the intervals hold.",
                    "Variance of a mean of correlated values: [1 + 2·Σ(1 − k/L)·φᵏ]/L, any text on time series.",
                    "Wind limit 3 m/s: EN 15194, from memory. Road load of 105 kg, C_rr 0.009, C_dA 0.6 m²; 75 ± 10 W; "
                            + "scatter and day effect: house values, common practice, no source."),
            "6.10, 6.18, 6.22, 6.15, 6.05, 5.98, 6.02, 6.11, 6.20, 6.26 m/s, one a second: mean 6.160 m/s, half-width "
                    + "0.325 m/s. An interval that took the ten for independent would say ± 0.065 m/s.",
            "Not a top speed, not a cut-off, not a speed on a hill. Levels 0.5 m/s apart are often not told apart "
                    + "by one "
                    + "passage. A speed close to a legal limit wants both directions, a calibrated instrument and "
                    + "the day's wind.");

    private AssistSpeedHandbook() {}
}
