package org.measuredmile.trial.range;

import java.util.Optional;
import java.util.regex.Pattern;
import org.measuredmile.quantity.Rounding;
import org.measuredmile.trial.ResolvedReadings.Value;
import org.measuredmile.trial.TrialInput;

/// What energy cost on the day, in whatever money it was written.
///
/// Shape: `label` is the price of a kilowatt-hour and its currency, `0.32-EUR`: a cost is compared only with others at
/// the same price, and never across currencies.
/// Unit: money per joule.
record EnergyPrice(double perJoule, String label, String written) {
    /// Letters of a currency, by ISO 4217 or as people write it, before the unit of energy.
    private static final Pattern CURRENCY = Pattern.compile("(\\p{L}+)\\s*/");

    private static final double JOULES_PER_KWH = 3.6e6;
    private static final int DIGITS = 4;

    static Optional<EnergyPrice> of(TrialInput input) {
        return input.readings().ofDay("energy-price").map(EnergyPrice::of);
    }

    private static EnergyPrice of(Value price) {
        String written = price.reading().written();
        String amount = Rounding.toSignificant(price.si() * JOULES_PER_KWH, DIGITS)
                .stripTrailingZeros()
                .toPlainString();
        var currency = CURRENCY.matcher(written);
        return new EnergyPrice(price.si(), currency.find() ? amount + "-" + currency.group(1) : amount, written);
    }
}
