package org.measuredmile.trial.range;

import java.util.List;
import org.measuredmile.trial.Handbook;

/// The trial's page in the method handbook.
final class RangeHandbook {
    static final Handbook PAGE = new Handbook(
            "The distance from a full battery until assistance ends or the display says empty, on a stated loop"
                    + " at one"
                    + " level, as ridden and at reference conditions; the energy it took out of the battery, in all,"
                    + " per distance and by speed.",
            "range = ∫ v dt over all recordings of the run; E = ∫ U·I dt; range at reference = range·c_ride/c_ref,"
                    + " c = m·g·C_rr + ½·ρ·C_dA·(v² + ½·w²) + m·g·A·λ + n_s·½·m·v² − P_r/v; of a ride that stopped"
                    + " early, range = distance/f with f = energy used / energy usable.",
            List.of(
                    "Agree how it ends before the start. Charge fully with the supplied charger, rest an hour,"
                            + " ride laps"
                            + " of one loop at one level. By throttle alone, or at an effort held by a power meter.",
                    "Recordings of one ride are joined by their dates; a stretch that two hold counts once. A"
                            + " pause adds"
                            + " no way. Where nothing was recorded, the straight line between the two ends stands in,"
                            + " within 30 %; more than a tenth so and there is no figure.",
                    "Energy: the battery's log; without one what was put back at the wall times the charger's"
                            + " efficiency"
                            + " (0.87 ± 0.03 where nobody measured it); without either 93 ± 3 % of the nominal"
                            + " energy,"
                            + " and then only for a battery ridden empty. Log and wall are compared.",
                    "A log on another clock is laid on the ride by when the bike rides and when the battery"
                            + " works. It is"
                            + " told by how much the clocks differ.",
                    "Cost: energy at the wall per distance times the price of energy, where one is written down for"
                            + " the day; by the battery's log over the charger's efficiency where no meter was at"
                            + " the wall. The price counts as exact; the battery's wear is not in it.",
                    "To reference: the same speeds by the same bike with a rider of 80 kg, no wind, level, no"
                            + " stops, air"
                            + " of 20 °C and 100 kPa, the rider giving 75 W or, by throttle, nothing. Road load"
                            + " from the"
                            + " day's coast-down or what is usual. λ = 0.75 ± 0.12 of an ascent is not given"
                            + " back. 20,000"
                            + " draws; each uses one road load for both; what the efficiency changes by is 6 % of the"
                            + " ratio's logarithm. The figure is the mean over the draws (JCGM 101, 7.6).",
                    "No figure at reference where the ratio is beyond a factor of 1.49 either way, where the"
                            + " rider alone"
                            + " nearly suffices, or where the speeds are not known.",
                    "Stopped early: published as at least what was ridden. The prediction beside it needs three laps,"
                            + " measured energy and 30 % of the battery; never the display's per cent.",
                    "By speed: pieces of ten seconds, sorted by their mean speed; their energy over their way."),
            List.of(
                    "Road load: Martin, Milliken, Cobb, McFadden and Coggan, Journal of Applied Biomechanics 14"
                            + " (1998)"
                            + " 276-291. Draws: JCGM 101:2008.",
                    "Energy in pieces: ratio estimation, Cochran, Sampling Techniques, 3rd edition 1977,"
                            + " chapter 6, from"
                            + " memory.",
                    "Usable share of 90 to 97 %, charger of 80 to 90 %: from memory. Scatter, scales and the"
                            + " share lost:"
                            + " house values, no published source."),
            "42 km by throttle, 110 kg in all, 6.5 m/s, wind 1.5 m/s, air of 1.2 kg/m³, 2 m of ascent and 0.3 stops a"
                    + " kilometre, C_rr 0.009, C_dA 0.6 m²: 7.67745 Wh/km. With 105 kg, air of 1.188 kg/m³, no wind,"
                    + " ascent or stops: 6.75700 Wh/km. Ratio 1.13622, range 47.721 km.",
            "Pedalling without a power meter the range at reference is known to about 30 % only: rank and check"
                    + " claims by"
                    + " throttle or with a power meter. Cold cells hold less; that is not corrected, the battery's"
                    + " temperature is stated.");

    private RangeHandbook() {}
}
