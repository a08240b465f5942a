package org.measuredmile.trial.climb;

import java.util.List;
import org.measuredmile.trial.Handbook;

/// The trial's page in the method handbook.
final class ClimbHandbook {
    static final Handbook PAGE = new Handbook(
            "The time between the gates of a surveyed hill, ridden up, by throttle alone or pedalling at the highest"
                    + " level; the mean and the lowest speed, the mean power at the wheel, what pedalling gained, and"
                    + " time and speeds at reference conditions. The two drives are never ranked together, nor two"
                    + " hills.",
            "Mean speed = L/T; P = (m·g·h + ½·m_eff·(v₂² − v₁²) + m·g·C_rr·L + ½·ρ·C_dA·(v̄ + w)·|v̄ + w|·L)/T;"
                    + " T_ref = T·t(reference)/t(as ridden), t(…) the time of a ride whose drive has the strength that"
                    + " gives T as ridden; steepest start: F = m·g·(sin θ + C_rr·cos θ).",
            List.of(
                    "Survey length, rise and gates once and write them in the course's record with their"
                            + " uncertainties; level some places on the way as its profile. Roll to the first gate at"
                            + " an even speed or as the course says; ride through both gates. Three runs by throttle"
                            + " alone, three pedalling, in turn, with rests so that motor and battery cool.",
                    "By recording: each pass of the gates the way up is a candidate; several may lie in one file. It"
                            + " begins where the line through the fixes crosses the first gate and ends where the"
                            + " speed has covered the surveyed length, because a receiver's position errs alike at"
                            + " both ends and its speed does not wander. Without a speed both ends are fixes.",
                    "By hand: a watch from the front wheel at the first mark to the front wheel at the last, good to"
                            + " 0.10 s a run and 0.05 s alike in all; or the frames of a camera, without anybody's"
                            + " reaction. Where a run has both, the time known better stands and the other is held"
                            + " against it.",
                    "The figure is the mean of the runs of one drive. Its scatter is moderated with that of earlier"
                            + " days; length, speed scale and reaction are common to all runs and do not average out;"
                            + " the any-day interval adds what days differ by: 2.5 % of the drive's strength and 0.75"
                            + " m/s of wind along the hill (standard deviations), as this hill answers to them in the"
                            + " model.",
                    "Length, time and mean speed as written are held against each other. A run's own recording tells"
                            + " whether its time or its speed is the odd one out; two runs that agree with each other"
                            + " on another length accuse the course's record; one run against the others accuses"
                            + " itself; otherwise it cannot be told and that is said. Rise, length and grade alike.",
                    "Power is the energy for height, rolling, air and a change of speed, over the time. Road load is"
                            + " the day's coast-down with its covariance, else the tyre's prior; masses are weighed,"
                            + " else 28 ± 4 kg for the bike; the head wind is what was written, turned to the hill's"
                            + " bearing.",
                    "At reference (80 kg rider with gear, 1.18 kg/m³, no wind) the hill is ridden again in the model."
                            + " The drive's force falls with speed as the standing starts of the day have it, else as"
                            + " one over the speed to the power 1 ± 0.35, whose width is then most of the interval and"
                            + " over which every other uncertainty is averaged too. The slope is that of the course's"
                            + " profile, whose heights' errors are in the budget; without one it is taken to be even,"
                            + " and what one that swells by 15 % over 180 m would do is in the budget. A"
                            + " bike that would stand still at the reference mass has no such figure, and that is"
                            + " said.",
                    "The foretold time is the model's with the force of the day's standing starts, masses, road load"
                            + " and course: no watch or trace of the climb enters it but for the speed at the first"
                            + " gate. Where the ridden time lies further off than 2.5 standard uncertainties, that is"
                            + " said: a rise, a mass or the state of the drive is not what was written.",
                    "What pedalling gained is the difference of both times, in which what they share cancels. Less"
                            + " than its 95 % interval of the day is \"no difference shown\"."),
            List.of(
                    "Energy at the wheel: Martin, Milliken, Cobb, McFadden and Coggan, Journal of Applied Biomechanics"
                            + " 14 (1998) 276-291.",
                    "Watch: start and stop together 0 ± 0.10 s, published study of hand timing, as noted on the"
                            + " crew's practice page. Riders repeat a hill within 1.1 to 1.4 % of its time, the same.",
                    "Timing by gate and speed, its uncertainty and its coverage: the crew's own study of reduction"
                            + " algorithms by simulation.",
                    "Scatter between days, wind, and how the drive's force falls: house values, no published"
                            + " source."),
            "105 kg (turning of the wheels 1.575 kg), 18 m up over 300 m in 62 s, from 5.6 to 4.2 m/s, C_rr 0.009,"
                    + " C_dA 0.6 m², 1.19 kg/m³, no wind: 298.945 W for height, −11.792 W from speed, 44.842 W for"
                    + " rolling, 40.444 W for air, together 372.439 W.",
            "Not below 20 s. A hill is compared with itself only: its surface, its bends and its wind are in the"
                    + " time. Whether a motor would overheat on a longer climb is not told. At another mass without"
                    + " standing starts the interval is wide: a bike at the limit of its force slows far more than one"
                    + " at the limit of its power.");

    private ClimbHandbook() {}
}
