package org.measuredmile.trial.range;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.motion.Journey;
import org.measuredmile.trial.Trace;

/// What the plot of a range ride shows: its speed, a mean for every part of it, and where one recording ends and the
/// next begins.
final class RidePlot {
    private static final int PARTS = 400;

    private RidePlot() {}

    static Trace of(Journey journey) {
        var speed = journey.speed();
        double fromS = speed.timeS(0);
        double partS = Math.max(1, journey.spanS() / PARTS);
        var times = new ArrayList<Double>();
        var values = new ArrayList<Double>();
        int i = 0;
        for (double at = fromS; i < speed.size(); at += partS) {
            double sum = 0;
            int count = 0;
            for (; i < speed.size() && speed.timeS(i) < at + partS; i++) {
                sum += speed.value(i);
                count++;
            }
            if (count > 0) {
                times.add(at - fromS + partS / 2);
                values.add(sum / count);
            }
        }
        var line = new Trace.Line(Trace.Role.SAMPLES, "speed, mean of each part", array(times), array(values));
        var first = journey.legs().getFirst();
        return new Trace(
                first.recording().name(),
                fromS - first.shiftS(),
                "beginning",
                QuantityKind.SPEED,
                List.of(line),
                joints(journey, fromS));
    }

    private static List<Trace.Event> joints(Journey journey, double fromS) {
        return journey.legs().stream()
                .skip(1)
                .map(leg -> new Trace.Event(
                        leg.recording().name() + " begins",
                        leg.source().channel().timeS(0) + leg.shiftS() - fromS,
                        0,
                        OptionalDouble.empty()))
                .toList();
    }

    private static double[] array(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
