package org.measuredmile.trial.standingstart;

import java.util.List;
import org.measuredmile.trial.Handbook;

/// The trial's page in the method handbook.
final class StandingStartHandbook {
    static final Handbook PAGE = new Handbook(
            "The time and the distance from the bike's first movement until it has a stated speed, on level road, by"
                    + " throttle alone or pedalling at the highest level. The two drives are different trials and are"
                    + " never ranked together.",
            "v = a·u²/2t_r while u < t_r, then a·(u − t_r/2) − b·(u − t_r)², u the time since first movement;"
                    + " time = t_c − t_0, t_c where a parabola through the samples crosses the speed; distance = the"
                    + " model's to 3.5 m/s, then ∫ v dt; force = m_eff·a + m·g·C_rr + ½·ρ·C_dA·v²; power = work of"
                    + " the force over its time; thrust is min(F₀, P/v), its launch force F₀ and power limit P fitted"
                    + " by (m + m_w)·dv/dt = c·(min(F₀, P/v) − R(v)), c rising from 0 to 1 over the build-up; at"
                    + " reference: times ∫ (m' + m_w)/(F − R') dv over ∫ (m + m_w)/(F − R) dv, and the same with v·dv"
                    + " for a distance.",
            List.of(
                    "Stand still for a second or more, both feet up or one on the ground without pushing. Start on"
                            + " the word and ride on until a little beyond the speed. Three runs each way, in turn,"
                            + " with rests so that motor and battery cool.",
                    "By recording of 5 samples a second or more: each rise from rest is a candidate. A rolling"
                            + " start, a push, a gap, too few samples or a flat approach is refused with its own"
                            + " reason. One that crept before it went, or is refused, shows its times and distances"
                            + " from 0.5 m/s on, which need no first movement; they are in no figure.",
                    "The model of the start is fitted to the raw samples from 3 s before to 3.5 m/s by least"
                            + " squares, with priors: build-up 0.40 ± 0.12 s, fading 0.10 ± 0.15 m/s³. Samples below"
                            + " 0.5 m/s stay in. A threshold there would lose half a second.",
                    "The speed is crossed by a parabola through the samples within 0.5 s (10 mph), 0.7 s (15 mph)"
                            + " or 1.0 s (20 mph), found anew three times. Below 0.1 m/s² there is no time, for it"
                            + " would not be defined. A speed that was not reached is said so.",
                    "By hand: a watch from the first movement until the display shows the speed. Each run is good"
                            + " to 0.10 s; 0.05 s of reaction and 0.2 s of a late display are common to all runs and"
                            + " do not average out.",
                    "The mean of the two directions is the figure, less what slope and wind add to it: uphill and"
                            + " into the wind a bike loses more time than it wins on the way back, and the wind's own"
                            + " square slows it both ways. How much is averaged over the slope and the wind that may"
                            + " have been, weighted by how well each explains the difference between the two ways.",
                    "The runs' scatter is moderated with that of earlier days; their own timing, which it shows as"
                            + " well, is not counted twice. The any-day interval adds the scatter between days. What"
                            + " scatters is thrust, by 3 % from run to run; a time answers to it more strongly the"
                            + " nearer the speed is to the bike's highest, by as much as its own trace says. What the"
                            + " priors leave open, filter and scale are common to all runs. The intervals have the"
                            + " tails of a sum whose scatters are known to few degrees of freedom.",
                    "Power needs the rider's mass as ridden. The bike's is that of the weigh-in, else 28 ± 4 kg."
                            + " Peak power is the mean over the two seconds where it is surely highest, less 0.8 %, by"
                            + " which the highest of noisy means is too high; mean power is the work from rest to"
                            + " the speed over its time. Road load is that of the day's coast-down, else what is usual"
                            + " for the tyre; air density follows from temperature, pressure and humidity.",
                    "Launch force and power limit are fitted to each start from rest to nine tenths of its highest"
                            + " speed; a start that does not tell the two apart gives neither. Inputs that move both"
                            + " make the correlation that goes with them; their scatter is taken to be alike by 0.7.",
                    "At reference conditions (80 kg rider with gear, 20 °C, 100 kPa, 50 % humidity, level, calm) a"
                            + " time or a distance is multiplied by the model's ratio with the day's own force and"
                            + " power, or, where only a watch was used, with those that take the measured time and a"
                            + " power limit that sets in at 3.3 ± 1.2 m/s. What is not known of mass, air, road load"
                            + " and thrust is in the correction. The build-up takes its time whatever the mass."),
            List.of(
                    "Watch: start and stop together 0 ± 0.10 s, published study of hand timing, as noted on the"
                            + " crew's practice page.",
                    "Fit, windows, refusals and their coverage: the crew's own study of reduction algorithms by"
                            + " simulation.",
                    "Priors, scatter, road load and wind: house values, no published source."),
            "Starts of 3.42, 3.55, 3.47 and 3.60 s with a scatter of 0.09 s known to 12 degrees of freedom and"
                    + " 0.05 s in common: 3.510 s, standard uncertainty 0.0673 s, 59.9 degrees of freedom, ± 0.135 s."
                    + " 200 N and 800 W bring 110 kg to 8 m/s in 2.2 s + 3.3 s = 5.5 s over 24.93 m where nothing"
                    + " resists; 100 kg in 5.0 s over 22.67 m: a ratio of 0.909.",
            "Not below 5 samples a second: slow receivers lag by seconds. Near the bike's top speed the time to a"
                    + " speed depends on wind and air more than on the bike. A hand-held watch cannot see how softly"
                    + " a motor sets in; the time from full thrust is the better one to compare between bikes.");

    private StandingStartHandbook() {}
}
