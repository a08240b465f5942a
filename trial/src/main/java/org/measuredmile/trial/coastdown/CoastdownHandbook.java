package org.measuredmile.trial.coastdown;

import java.util.List;
import org.measuredmile.trial.Handbook;

/// The coast-down's page in the handbook.
final class CoastdownHandbook {
    static final Handbook PAGE = new Handbook(
            "The force that rolling and air put against bike and rider on a level road in still air, as a function of "
                    + "speed, told as a rolling coefficient and a drag area that belong together.",
            "m_eff·dv/dt = −[m·g·(sin θ + C_rr·cos θ) + ½·ρ·C_dA·(v + w)·|v + w|], m_eff = m + I/r²; C_rr, C_dA, one "
                    + "grade and one wind for a pair of coasts, and a start speed for each.",
            List.of(
                    "Every long, gentle fall of speed is found; one second is cut off at both ends. It "
                            + "counts when a run "
                            + "was written for it: its speed alone does not tell it from soft pedalling.",
                    "Without a recording, two splits of a watch do: from 30 to 20 and from 20 to 10 km/h on "
                            + "the display.",
                    "Each coast out is paired with the next one back. A coast without its pair gives nothing: one way "
                            + "alone fits beautifully and can be wrong by half.",
                    "A pair is fitted through the equation of motion, never from differentiated speed, with the wind "
                            + "free (0 ± 5 m/s along the road) and the grade free (0 ± 1 %). Neither is published.",
                    "The fit knows how errors lean on each other: gusts of 0.4 m/s that last 8 s, and a wind that "
                            + "differs by 0.4 m/s from run to run, push the whole rest of a coast off. It is a least-"
                            + "squares fit to samples made independent by the factor of their covariance, at the wind "
                            + "that a plain fit finds first.",
                    "The figures are means over the pairs, and their scatter is the pairs' own, moderated by that of "
                            + "earlier days: gusts, not samples, are the noise.",
                    "Gusts and changes of wind within a pair add to the mean of (v + w)² as if they were "
                            + "rolling: 0.32 ± "
                            + "0.12 m²/s² is taken off.",
                    "Mass, turning mass, air density and the scale of the speed are common to all pairs and added "
                            + "whole. Force and both coefficients are published; their correlation goes to the trials "
                            + "that use them.",
                    "Where the speeds lie too close together to tell rolling from air, only forces at speeds that were "
                            + "ridden are published.",
                    "At reference conditions: the same coefficients with a rider of 80 kg with gear in air of 20 °C, "
                            + "100 kPa and 50 % humidity."),
            List.of(
                    "Martin, Milliken, Cobb, McFadden and Coggan, Journal of Applied Biomechanics 14 (1998) 276-291 "
                            + "(force model)",
                    "40 CFR 86.529-98 and SAE J1263-2010 (coasting both ways)",
                    "Picard et al., Metrologia 45 (2008) 149-155 (air density)",
                    "JCGM 100:2008, 4.2 and 5.2 (means, correlated inputs)"),
            "Five pairs on a level road in still air of 20 °C, 100 kPa and 50 % humidity (1.183 kg/m³), 105 kg in all: "
                    + "the fits gave C_rr 0.0081, 0.0076, 0.0085, 0.0079, 0.0083 and C_dA 0.585, 0.630, 0.560, 0.605, "
                    + "0.590 m². For gusts ½ρ·C_dA·0.32 m²/s², some 0.11 N, is taken off the rolling force. At 20 km/h "
                    + "the pairs then say 18.91, 19.21, 18.87, 19.07 and 19.21 N: mean 19.06 N. Their own scatter, "
                    + "0.16 N, moderated by that of earlier days (6.2 %, worth 12 pairs), gives 0.459 N for "
                    + "the mean of "
                    + "five. The means of the coefficients are 0.00797 and 0.594 m².",
            "Cannot be told: the drag of a hub from that of the tyres, a grade from a wind, the "
                    + "rolling coefficient to better than some 10 % outdoors. Tyre pressure, tyre temperature and "
                    + "posture change the result: write them down.");

    private CoastdownHandbook() {}
}
