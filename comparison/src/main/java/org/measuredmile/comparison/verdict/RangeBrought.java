package org.measuredmile.comparison.verdict;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.comparison.KeptLoad;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.TestedBike.Result;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.Air;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.UsedLoad;
import org.measuredmile.trial.range.RangeElsewhere;

/// Brings a range at reference conditions to those of a claim, through the road load.
///
/// A battery colder or warmer than the claim says gives other energy than the road load knows of: 0.2 % a
/// kelvin is added to the uncertainty, and from 15 K on nothing is said.
/// Source: both from memory, house values; the rest as [RangeElsewhere].
final class RangeBrought {
    private static final double MOST_KELVIN = 15;
    private static final double PER_KELVIN = 0.002;

    private final TestedBike bike;
    private final Optional<TestDay> day;
    private final RangeConditions conditions;
    private final boolean isBest;

    RangeBrought(TestedBike bike, Optional<TestDay> day, RangeConditions conditions, boolean isBest) {
        this.bike = bike;
        this.day = day;
        this.conditions = conditions;
        this.isBest = isBest;
    }

    /// @param meanMps the mean speed of the ride
    /// @param otherMps the speed of another level, where the claim is made for one that was not ridden
    Elsewhere of(Result atReference, double meanMps, OptionalDouble otherMps, Draft draft) {
        double kelvin = temperatureGapK();
        if (kelvin > MOST_KELVIN) {
            return new Elsewhere.Unreachable(
                    String.format(
                            Locale.ROOT,
                            "the ride was %.0f °C away from the claim’s temperature, and batteries change with it",
                            kelvin),
                    "a range ride nearer to that temperature");
        }
        boolean isByThrottle = Claims.variant(atReference).has("levelRole", "throttle");
        double riderW = RangeElsewhere.referenceW(isByThrottle);
        var reference = new RangeElsewhere.Ride(
                RoadSetting.REFERENCE_RIDER_KG, Air.REFERENCE.densityKgPerM3(), meanMps, 0, riderW);
        double wantedMps = conditions.speedMps().orElse(otherMps.orElse(meanMps));
        double pedalledW = otherMps.isPresent() ? RangeElsewhere.referenceW(false) : riderW;
        double wantedW = conditions.riderW().orElse(pedalledW);
        var wanted = new RangeElsewhere.Ride(
                conditions.riderKg(), conditions.airKgPerM3(), wantedMps, conditions.windMps(), wantedW);
        var brought = RangeElsewhere.of(
                atReference.figure(), reference, wanted, bikeAs(atReference.day(), PER_KELVIN * kelvin));
        if (!brought.against().isEmpty()) {
            return new Elsewhere.Unreachable(
                    brought.against(), "a range ride under the claim’s conditions, by throttle or with a power meter");
        }
        var under = new Tried.Under(
                conditions.riderKg(),
                conditions.airK(),
                conditions.windMps(),
                wantedMps,
                wantedW,
                isBest,
                otherMps.isPresent());
        return new Elsewhere.Brought(draft.tried(atReference, brought.value(), brought.known(), Optional.of(under)));
    }

    /// How far the battery, or else the air, of the ride was from the claim's temperature; from the
    /// reference one where the claim states none. Warmer air than it was ridden in is only taken for its
    /// density.
    private double temperatureGapK() {
        var met = day.map(TestDay::conditions);
        var battery = met.flatMap(one -> one.batteryTemperatureK().isPresent()
                ? Optional.of(one.batteryTemperatureK().getAsDouble())
                : one.airTemperatureK().isPresent()
                        ? Optional.of(one.airTemperatureK().getAsDouble())
                        : Optional.<Double>empty());
        double wantedK = conditions.isTemperatureStated() ? conditions.airK() : Air.REFERENCE.temperatureK();
        return battery.map(kelvin -> Math.abs(kelvin - wantedK)).orElse(0.0);
    }

    private RangeElsewhere.Bike bikeAs(String ridden, double besidesSd) {
        var weighed = nearest("weighin.mass", Variant.of("battery", "in"), ridden);
        return new RangeElsewhere.Bike(
                weighed.map(one -> one.figure().value()).orElse(RoadSetting.BIKE_KG),
                weighed.map(one -> one.figure().anyDay().standard()).orElse(RoadSetting.BIKE_SD_KG),
                load(ridden),
                besidesSd);
    }

    private KnownLoad load(String ridden) {
        var rolling = nearest(UsedLoad.ROLLING, Variant.NONE, ridden);
        var area = nearest(UsedLoad.DRAG_AREA, Variant.NONE, ridden);
        if (rolling.isEmpty() || area.isEmpty()) {
            String tyres = day.map(one -> one.configuration().tyres()).orElse("");
            return UsedLoad.usual(tyres + " " + bike.bike().wheelSize());
        }
        return KeptLoad.of(rolling.get(), area.get());
    }

    /// The result of the same day where there is one, else the latest.
    private Optional<Result> nearest(String figure, Variant variant, String ridden) {
        var all = bike.of(figure).stream()
                .filter(one -> Claims.variant(one).equals(variant))
                .toList();
        return all.stream()
                .filter(one -> one.day().equals(ridden))
                .findFirst()
                .or(() -> all.stream().findFirst());
    }
}
