package org.measuredmile.roadload;

/// How the wind along a coast changes: gusts that forget themselves, and a mean that differs from run to run.
///
/// Unit: m/s, standard deviations; `lastsS` the time in seconds after which a gust's correlation has fallen to 1/e.
public record Gusts(double sdMps, double lastsS, double changeMps) {
    /// The longest step of the propagation, in seconds.
    private static final double STEP_S = 0.5;

    /// What the gusts do to the speeds of a coast that began with a given speed: their covariance matrix.
    ///
    /// Shape: one row and column a sample; the first sample's are 0.
    /// Unit: (m/s)²; `dragAreaM2` is the one that the gusts meet, `headWindMps` the run's own mean wind.
    /// Formula: du/dt = −d(t)·(u + g + h), d = ρ·C_dA·|v + w|/m_eff, g a Gauss–Markov process, h the same
    /// all along; linear in the gusts about the speeds as they were.
    public double[][] covariance(CoastDown.Run run, Setting setting, double dragAreaM2, double headWindMps) {
        int size = run.timesS().length;
        var steps = new Step[Math.max(0, size - 1)];
        for (int i = 0; i < steps.length; i++) {
            double mps = (run.speedsMps()[i] + run.speedsMps()[i + 1]) / 2;
            double rate = setting.airKgPerM3() * dragAreaM2 * Math.abs(mps + headWindMps) / setting.effectiveKg();
            steps[i] = step(rate, run.timesS()[i + 1] - run.timesS()[i]);
        }
        double[][] covariance = new double[size][size];
        double[] shifted = new double[size];
        var at = new Moments(0, 0, sdMps * sdMps);
        for (int i = 0; i < size; i++) {
            if (i > 0) {
                at = at.after(steps[i - 1]);
                shifted[i] = steps[i - 1].kept() * shifted[i - 1] - (1 - steps[i - 1].kept()) * changeMps;
            }
            double speed = at.speed();
            double gust = at.both();
            for (int k = i; k < size; k++) {
                covariance[i][k] = speed;
                if (k < size - 1) {
                    speed = steps[k].kept() * speed + steps[k].moved() * gust;
                    gust *= steps[k].gustKept();
                }
            }
        }
        for (int i = 0; i < size; i++) {
            for (int k = i; k < size; k++) {
                covariance[i][k] += shifted[i] * shifted[k];
                covariance[k][i] = covariance[i][k];
            }
        }
        return covariance;
    }

    /// What a stretch of time does to a displaced speed and to the gust that moves it, and what it adds.
    private record Step(double kept, double moved, double gustKept, double speedVar, double bothVar, double gustVar) {
        Step then(Step next) {
            return new Step(
                    next.kept * kept,
                    next.kept * moved + next.moved * gustKept,
                    next.gustKept * gustKept,
                    next.kept * next.kept * speedVar
                            + 2 * next.kept * next.moved * bothVar
                            + next.moved * next.moved * gustVar
                            + next.speedVar,
                    next.gustKept * (next.kept * bothVar + next.moved * gustVar) + next.bothVar,
                    next.gustKept * next.gustKept * gustVar + next.gustVar);
        }
    }

    /// Variances of speed and gust, and their covariance, at a moment.
    private record Moments(double speed, double both, double gust) {
        Moments after(Step step) {
            return new Moments(
                    step.kept * step.kept * speed
                            + 2 * step.kept * step.moved * both
                            + step.moved * step.moved * gust
                            + step.speedVar,
                    step.gustKept * (step.kept * both + step.moved * gust) + step.bothVar,
                    step.gustKept * step.gustKept * gust + step.gustVar);
        }
    }

    private Step step(double rate, double spanS) {
        int count = Math.max(1, (int) Math.ceil(spanS / STEP_S - 1e-9));
        double h = spanS / count;
        double kept = StrictMath.exp(-rate * h);
        double gustKept = StrictMath.exp(-h / lastsS);
        double fresh = sdMps * sdMps * (1 - gustKept * gustKept);
        // To second order in the step: the gust's mean over it, and how far a fresh one moves the speed.
        var one = new Step(
                kept,
                -rate * h * Math.sqrt(kept * gustKept),
                gustKept,
                rate * rate * h * h * fresh / 3,
                -rate * h * fresh / 2,
                fresh);
        var all = one;
        for (int i = 1; i < count; i++) {
            all = all.then(one);
        }
        return all;
    }
}
