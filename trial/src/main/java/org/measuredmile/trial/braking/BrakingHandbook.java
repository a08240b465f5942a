package org.measuredmile.trial.braking;

import java.util.List;
import org.measuredmile.trial.Handbook;

/// The trial's page in the method handbook.
final class BrakingHandbook {
    static final Handbook PAGE = new Handbook(
            "The distance in which the bike stops from a stated speed with both brakes on level road."
                    + " Stopping distance begins when the control first moves; braking distance begins when the"
                    + " bike first slows. The two are different figures and are never ranked together.",
            "corrected = S · (v_n / v_0)², S the distance, v_0 the entry speed, v_n the nominal "
                    + "speed; by a trace with a lever channel v_n · t + S_b · (v_n / v_0)², t the take-up time "
                    + "and S_b the braking distance; mean deceleration v_0² / 2 S_b; mean fully developed "
                    + "deceleration 0.63 v_0² / 2 ΔS between 0.8 v_0 and 0.1 v_0.",
            List.of(
                    "Ride steadily at the nominal speed. A mark is fired or noted when the control "
                            + "first moves. Stop in a straight line with both brakes. Measure from the mark to "
                            + "where the front wheel touches the road. A run counts when its entry speed lies "
                            + "within 1.5 km/h of the nominal speed.",
                    "By tape: each distance is brought to the nominal speed with the square of the "
                            + "speed. One run is known to about 0.02 m of tape, 0.02 s of mark and 0.06 m/s of "
                            + "entry speed; 0.01 s of mark and the scale of the speed are common to all runs "
                            + "and do not average out.",
                    "By trace: a model of steady riding, linear build-up of deceleration from"
                            + " what slowed the bike before, braking and rest, seen through the receiver's"
                            + " own filter, is fitted to the raw samples by least squares with priors: build-up"
                            + " 0.225 ± 0.045 s, change of deceleration 0.2 ± 0.4 m/s³, filter 0.25 "
                            + "± 0.25 s. Nothing is smoothed first. What a prior leaves "
                            + "open is common to all runs of the day.",
                    "By satellite speed and accelerometer: where an accelerometer of 20 samples a"
                            + " second or more is in the recording, or in another of the day on a stated clock,"
                            + " its mounting is found from gravity at rest and from the speed's own rate, its"
                            + " forward part is added up backwards from rest, and its scale, zero and slow errors"
                            + " are fitted to the receiver's speed together with the receiver's lag and filter."
                            + " The onset is where a ramp begins in the raw acceleration, felt on a fork that"
                            + " dives with the braking, by 0 to 2° at 6 m/s², 2.1 swings a second damped by"
                            + " half; what that leaves open is common to all runs. No shape of the braking is"
                            + " assumed. A mounting that moved, a saturated range or a rest of less than a second"
                            + " is refused and the satellite speed stands alone.",
                    "The mean of the runs is the figure. Its scatter is moderated with that of "
                            + "earlier days; the any-day interval adds the scatter between days. Distances are "
                            + "brought to level road where a slope was written.",
                    "Where a run has both tape and trace they are compared. They stay two figures: a "
                            + "tape measures from the control, a trace alone from the onset, and the difference"
                            + " is the take-up."),
            List.of(
                    "Correction and window: EN 14766:2005, 4.6.7.5.1.9 and .10.",
                    "Mean fully developed deceleration: Directive 93/14/EEC, annex, 1.1.2.",
                    "Start of a stop at the control: California Vehicle Code 26456; SAE J299 (1993), definitions.",
                    "Priors, mark, tape, scale and scatter: house values, no published source."),
            "21.2 ft from 20.3 mph, 20.7 ft from 19.8 mph and 21.9 ft from 20.4 mph become 20.578, "
                    + "21.120 and 21.050 ft from 20 mph: mean 20.916 ft, standard deviation of the runs 0.295 "
                    + "ft.",
            "Not below 10 samples a second, not in one brake, not on a slope that nobody measured. A "
                    + "satellite trace alone does not know the build-up of the brakes better than its prior. No"
                    + " allowance is made for the rider's mass: it is reported. A crew measures this rider on "
                    + "this bike. No figure is given at reference conditions: as measured it already stands at "
                    + "the nominal speed on the level, the air takes 2 % of the stop, so that its density moves "
                    + "the distance by less than 0.2 %, a wind at the trial's limit by less than what days differ "
                    + "by, and whether mass moves it at all depends on whether brake or balance ends the "
                    + "deceleration (docs/decisions/0084-what-is-brought-to-reference.md).");

    private BrakingHandbook() {}
}
