package org.measuredmile.recording;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/// How much a recording climbed: rises that exceed a hysteresis, so that noise of the height climbs nothing.
///
/// Shape: `isBarometric` where pressure was recorded; `relativeUncertainty` is that of the scale of heights alone;
/// `findings` say what it is that was assumed.
/// Unit: metres. `ascentM` is at the true air temperature where it was given, else as the instrument counted it.
/// Valid: a barometer reads heights as in the standard atmosphere (288.15 K at sea level). Air of another temperature
/// is
/// thicker or thinner by the ratio of absolute temperatures: 5 % less at 0 °C, 7 % more at 35 °C.
/// Source: hypsometric equation and standard atmosphere, ISO 2533:1975; hystereses are house values.
public record Ascent(
        double ascentM, double hysteresisM, boolean isBarometric, double relativeUncertainty, List<Finding> findings) {
    private static final double BAROMETRIC_HYSTERESIS_M = 3;
    private static final double SATELLITE_HYSTERESIS_M = 10;
    private static final double STANDARD_K = 288.15;
    /// Air between 0 and 35 °C, seen as a rectangle about the middle of it.
    private static final double UNKNOWN_TEMPERATURE = 35 / 2.0 / 288.15 / Math.sqrt(3);

    private static final double KNOWN_TEMPERATURE_K = 2;

    public Ascent {
        findings = List.copyOf(findings);
    }

    /// The hysteresis for a recording's heights.
    public static double hysteresisM(Recording recording) {
        return isBarometric(recording) ? BAROMETRIC_HYSTERESIS_M : SATELLITE_HYSTERESIS_M;
    }

    private static boolean isBarometric(Recording recording) {
        return recording.channel(ChannelKind.PRESSURE).isPresent();
    }

    /// Rises of a channel of heights, each counted once it exceeds the hysteresis, in metres.
    public static double risesM(Channel altitude, double hysteresisM) {
        double ascentM = 0;
        double levelM = altitude.isEmpty() ? 0 : altitude.value(0);
        for (double heightM : altitude.values()) {
            if (heightM - levelM >= hysteresisM) {
                ascentM += heightM - levelM;
                levelM = heightM;
            } else if (levelM - heightM >= hysteresisM) {
                levelM = heightM;
            }
        }
        return ascentM;
    }

    /// The ascent of a recording, or nothing without heights.
    ///
    /// @param airTemperatureK as written down for the day; a thermometer on a bike in the sun is no air temperature
    public static Optional<Ascent> of(Recording recording, OptionalDouble airTemperatureK) {
        return recording.channel(ChannelKind.ALTITUDE).map(altitude -> of(recording, altitude, airTemperatureK));
    }

    private static Ascent of(Recording recording, Channel altitude, OptionalDouble airTemperatureK) {
        double hysteresisM = hysteresisM(recording);
        double asWrittenM = risesM(altitude, hysteresisM);
        var findings = new ArrayList<Finding>();
        if (!isBarometric(recording)) {
            return new Ascent(asWrittenM, hysteresisM, false, 0, findings);
        }
        if (airTemperatureK.isEmpty()) {
            findings.add(Finding.warning(
                    "air-temperature-needed",
                    Place.in(recording.name()),
                    "heights by air pressure hold for 15 °C; at 0 °C they are 5 % too large, at 35 °C 7 % too small",
                    "write down the day's air temperature"));
            return new Ascent(asWrittenM, hysteresisM, true, UNKNOWN_TEMPERATURE, findings);
        }
        double factor = airTemperatureK.getAsDouble() / STANDARD_K;
        return new Ascent(asWrittenM * factor, hysteresisM, true, KNOWN_TEMPERATURE_K / STANDARD_K, findings);
    }
}
