package org.measuredmile.trial.assistspeed;

import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.trial.ResolvedReadings;

/// How well an instrument's speed scale is known.
///
/// Unit: `factor` multiplies what the instrument says; `relative` is the standard uncertainty of that, relative;
/// `halfStepMps` is half the width of what one reading of it may hide, 0 where many samples were averaged.
/// Source: 0.3 % for a receiver's own speed, 1 % for a wheel whose roll-out was not measured, 2 % for a display:
/// common practice, no source.
record SpeedScale(String instrument, double factor, double relative, double halfStepMps, String assumed) {
    private static final double RECEIVER = 0.003;
    private static final double WHEEL = 0.01;
    private static final double DISPLAY = 0.02;

    /// The scale of what wrote a recording; without an instrument a wheel's is assumed.
    static SpeedScale of(Optional<Instrument> instrument, boolean isWheelChannel) {
        boolean isReceiver = !isWheelChannel
                && instrument
                        .filter(one -> one.kind() == Instrument.Kind.RECEIVER)
                        .isPresent();
        return of(
                instrument,
                isReceiver ? RECEIVER : WHEEL,
                0,
                instrument.map(Instrument::factor).orElse(1.0));
    }

    /// The scale of what a person read; its factor is already in the reading, and a display flickers by its step.
    static SpeedScale of(ResolvedReadings.Value read) {
        boolean isReceiver = read.instrument()
                .filter(one -> one.kind() == Instrument.Kind.RECEIVER)
                .isPresent();
        return of(read.instrument(), isReceiver ? RECEIVER : DISPLAY, read.resolution(), 1);
    }

    private static SpeedScale of(Optional<Instrument> instrument, double usual, double halfStepMps, double factor) {
        var calibration = instrument.flatMap(Instrument::calibration);
        String id = instrument.map(Instrument::id).orElse("");
        String assumed = calibration.isPresent()
                ? ""
                : "the speed scale" + (id.isEmpty() ? "" : " of " + id) + " is right within "
                        + AssistSpeedWords.percent(usual) + " (standard uncertainty): no calibration is written down";
        return new SpeedScale(
                id,
                factor,
                calibration.map(Instrument.Calibration::standardUncertainty).orElse(usual),
                halfStepMps,
                assumed);
    }

    /// What the scale adds to the budget of a speed.
    List<Contribution> contributions(double speedMps) {
        String name = "calibration of " + (instrument.isEmpty() ? "the speed instrument" : instrument);
        var scale = Contribution.typeB(name, relative * speedMps)
                .sharedAs(instrument.isEmpty() ? "" : "calibration of " + instrument);
        return halfStepMps == 0
                ? List.of(scale)
                : List.of(scale, Contribution.typeB("step of the display", halfStepMps / Math.sqrt(3)));
    }
}
