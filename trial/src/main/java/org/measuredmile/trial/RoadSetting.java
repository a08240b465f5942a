package org.measuredmile.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.recording.day.Rider;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.Air;
import org.measuredmile.roadload.Gravity;
import org.measuredmile.roadload.Setting;

/// What a run moved and through which air, and how well each is known: the masses, what the wheels' turning adds, and
/// the density from temperature, pressure and humidity.
///
/// Unit: standard uncertainties in kilograms and kg/m³. `assumed` says what nobody wrote down, in words with its width;
/// `used` is the weighed mass where there is one. A trial that asks for it declares [#WEIGHED] among its uses.
/// Source of the priors: house values; sensors as read, 1 K, 300 Pa and 5 % humidity.
public record RoadSetting(
        Setting setting,
        double riderSdKg,
        double bikeSdKg,
        double turningSdKg,
        double airSdKgPerM3,
        List<String> assumed,
        List<Figure.Used> used) {
    /// The figure that the bike's mass is taken from.
    public static final String WEIGHED = "weighin.mass";
    /// What stands in where nobody weighed the bike.
    public static final String MASS_STAND_IN = "28 ± 4 kg";

    /// The same in kilograms: the mass and its standard uncertainty.
    public static final double BIKE_KG = 28;

    public static final double BIKE_SD_KG = 4;

    /// The rider of the reference conditions, with gear.
    public static final double REFERENCE_RIDER_KG = 80;

    private static final FigureKey WITH_BATTERY = new FigureKey(WEIGHED, Variant.of("battery", "in"));
    private static final double RIDER_KG = 85;
    private static final double RIDER_PRIOR_SD_KG = 15;
    private static final double RIDER_SD_KG = 0.5;
    /// What the turning of the wheels adds, in kilograms.
    public static final double TURNING_KG = 3.0;

    private static final double TURNING_SD_KG = 1.0;

    public RoadSetting {
        assumed = List.copyOf(assumed);
        used = List.copyOf(used);
    }

    /// The setting of a run, with the day's conditions.
    public static RoadSetting of(TrialInput input, Run run) {
        var assumed = new ArrayList<String>();
        var rider = input.day().rider(run.rider()).map(Rider::massAsRiddenKg).orElse(OptionalDouble.empty());
        if (rider.isEmpty()) {
            assumed.add("mass of the rider: 85 ± 15 kg");
        }
        var weighed = Optional.ofNullable(input.used().get(WITH_BATTERY));
        if (weighed.isEmpty()) {
            assumed.add("mass of the bike: " + MASS_STAND_IN);
        }
        var air = AirOfDay.of(input, run, assumed);
        var setting = new Setting(
                rider.orElse(RIDER_KG) + weighed.map(Figure::value).orElse(BIKE_KG),
                TURNING_KG,
                air.densityKgPerM3(),
                Gravity.STANDARD_MPS2);
        return new RoadSetting(
                setting,
                rider.isPresent() ? RIDER_SD_KG : RIDER_PRIOR_SD_KG,
                weighed.map(figure -> figure.thisDay().standard()).orElse(BIKE_SD_KG),
                TURNING_SD_KG,
                air.sdKgPerM3(),
                assumed,
                weighed.map(Figure::asUsed).map(List::of).orElse(List.of()));
    }

    /// Standard uncertainty of the whole mass, in kilograms.
    public double massSdKg() {
        return StrictMath.hypot(riderSdKg, bikeSdKg);
    }

    /// The same bike at reference conditions: the reference rider in the reference air.
    public Setting atReference(double riderKg) {
        double bikeKg = setting.massKg() - riderKg;
        return new Setting(
                bikeKg + REFERENCE_RIDER_KG,
                setting.turningKg(),
                Air.REFERENCE.densityKgPerM3(),
                Gravity.STANDARD_MPS2);
    }

    /// The rider's mass that was taken for a run, in kilograms.
    public static double riderKg(TrialInput input, Run run) {
        return input.day()
                .rider(run.rider())
                .map(Rider::massAsRiddenKg)
                .orElse(OptionalDouble.empty())
                .orElse(RIDER_KG);
    }
}
