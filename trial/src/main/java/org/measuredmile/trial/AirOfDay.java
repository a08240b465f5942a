package org.measuredmile.trial;

import java.util.List;
import java.util.OptionalDouble;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.day.Run;
import org.measuredmile.roadload.Air;
import org.measuredmile.roadload.StandardAtmosphere;

/// The density of the air in a run, from what was read of it.
///
/// Where nobody read the pressure, that of the standard atmosphere at the recordings' height stands in, or else
/// 100 ± 2 kPa.
/// Unit: kg/m³.
record AirOfDay(double densityKgPerM3, double sdKgPerM3) {
    private static final double USUAL_K = 288.15;
    private static final double USUAL_SD_K = 8;
    private static final double READ_SD_K = 1;
    private static final double USUAL_PA = 100_000;
    private static final double USUAL_SD_PA = 2_000;
    private static final double AT_HEIGHT_SD_PA = 1_000;
    private static final double READ_SD_PA = 300;
    private static final double USUAL_HUMIDITY = 0.6;
    private static final double USUAL_SD_HUMIDITY = 0.2;
    private static final double READ_SD_HUMIDITY = 0.05;
    /// No barometer and no thermometer in the open has read beyond these.
    private static final double LOWEST_PA = 50_000;
    private static final double HIGHEST_PA = 110_000;

    static AirOfDay of(TrialInput input, Run run, List<String> assumed) {
        var temperature = read(input, run, "air-temperature");
        var pressure = read(input, run, "pressure");
        var humidity = read(input, run, "relative-humidity");
        double pascal = pressure.orElseGet(() -> usualPa(input, assumed));
        double pascalSd =
                pressure.isPresent() ? READ_SD_PA : heightM(input).isPresent() ? AT_HEIGHT_SD_PA : USUAL_SD_PA;
        if (temperature.isEmpty()) {
            assumed.add("air temperature: 15 ± 8 °C");
        }
        if (humidity.isEmpty()) {
            assumed.add("relative humidity: 60 ± 20 %");
        }
        double kelvin = Math.clamp(temperature.orElse(USUAL_K), 230, 330);
        var air = new Air(
                kelvin, Math.clamp(pascal, LOWEST_PA, HIGHEST_PA), Math.clamp(humidity.orElse(USUAL_HUMIDITY), 0, 1));
        double density = air.densityKgPerM3();
        double byTemperature = density * (temperature.isPresent() ? READ_SD_K : USUAL_SD_K) / kelvin;
        double byPressure = density * pascalSd / pascal;
        double byHumidity = humiditySlope(air) * (humidity.isPresent() ? READ_SD_HUMIDITY : USUAL_SD_HUMIDITY);
        return new AirOfDay(density, StrictMath.hypot(StrictMath.hypot(byTemperature, byPressure), byHumidity));
    }

    private static double humiditySlope(Air air) {
        double dry = new Air(air.temperatureK(), air.pressurePa(), 0).densityKgPerM3();
        double wet = new Air(air.temperatureK(), air.pressurePa(), 1).densityKgPerM3();
        return Math.abs(wet - dry);
    }

    /// The run's own reading, else the day's condition.
    private static OptionalDouble read(TrialInput input, Run run, String name) {
        return input.readings()
                .of(run.id(), name)
                .or(() -> ConditionReadings.find(input.day().conditions(), name))
                .map(value -> OptionalDouble.of(value.si()))
                .orElse(OptionalDouble.empty());
    }

    private static double usualPa(TrialInput input, List<String> assumed) {
        var height = heightM(input);
        if (height.isPresent()) {
            assumed.add("pressure: that of the standard atmosphere at the recorded height, ± 1 kPa");
            return StandardAtmosphere.pressurePa(StandardAtmosphere.geopotentialM(height.getAsDouble()));
        }
        assumed.add("pressure: 100 ± 2 kPa");
        return USUAL_PA;
    }

    /// The middle height of the day's recordings, where they have heights that a road can have.
    private static OptionalDouble heightM(TrialInput input) {
        double[] heights = input.recordings().values().stream()
                .flatMap(recording -> recording.channel(ChannelKind.ALTITUDE).stream())
                .mapToDouble(AirOfDay::middle)
                .filter(height -> height > -430 && height < 5000)
                .sorted()
                .toArray();
        return heights.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(heights[heights.length / 2]);
    }

    private static double middle(Channel altitude) {
        double[] sorted = altitude.values().clone();
        java.util.Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
