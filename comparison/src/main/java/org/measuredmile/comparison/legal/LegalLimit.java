package org.measuredmile.comparison.legal;

import java.math.BigDecimal;
import org.measuredmile.comparison.legal.LegalRule.Operator;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.quantity.statistics.StudentT;

/// A limit in the unit of its own text, to its own digits.
///
/// Shape: 20 mph and 32 km/h are two limits; neither is ever converted into the other.
public record LegalLimit(BigDecimal value, Unit unit) {
    /// How sure an accusation has to be, one-sided.
    public static final double SURE = 0.975;

    /// Whether a value lies on the allowed side, beyond it, or so near that the data accuse nobody.
    ///
    /// Outside only where the whole interval lies on the forbidden side, within only where it lies on the
    /// allowed one: with a 95 % interval each is right in 97.5 of 100 cases at worst. The operator decides
    /// equality: below a limit, an end at the limit is already forbidden; at most, it is still allowed.
    /// Source: guarded acceptance and guarded rejection, JCGM 106:2012, 8.3.2 and 8.3.3.
    public LegalOutcome judge(Operator operator, Beside measured) {
        int low = measured.low().compareTo(value);
        int high = measured.high().compareTo(value);
        boolean isStrict = operator == Operator.BELOW;
        if (isStrict ? high < 0 : high <= 0) {
            return LegalOutcome.WITHIN;
        }
        return (isStrict ? low >= 0 : low > 0) ? LegalOutcome.OUTSIDE : LegalOutcome.CANNOT_TELL;
    }

    /// The interval that an accusation of a stated sureness is held to.
    ///
    /// Shape: at 97.5 % it is the figure's own 95 % interval, which need not be symmetric; at any other sureness
    /// that of Student's t around the value.
    public static Interval guarded(double si, Uncertainty known, double sure) {
        return sure == SURE
                ? known.interval95()
                : Interval.around(si, StudentT.quantile(sure, known.degreesOfFreedom()) * known.standard());
    }

    /// How far a value lies beyond the limit, in the limit's unit: negative below it.
    public BigDecimal excess(Beside measured) {
        return measured.value().subtract(value);
    }

    public String text() {
        return value.toPlainString() + " " + unit.symbol();
    }
}
