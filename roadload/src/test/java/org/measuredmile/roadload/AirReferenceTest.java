package org.measuredmile.roadload;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AirReferenceTest {
    private static Air air(double celsius, double pascal, double humidity) {
        return new Air(273.15 + celsius, pascal, humidity);
    }

    /// Constants of Picard et al., Metrologia 45 (2008) 149-155, as two open implementations print them; values
    /// computed from them apart from this code.
    @ParameterizedTest
    @CsvSource({
        "20, 101325, 0.5, 1.19931",
        "25, 100000, 0.5, 1.16182",
        "20, 101325, 0, 1.20456",
        "20, 101325, 0.7, 1.19722"
    })
    void densityIsThatOfTheCipmFormula(double celsius, double pascal, double humidity, double density) {
        assertThat(air(celsius, pascal, humidity).densityByCipm()).isCloseTo(density, within(1e-5));
    }

    /// Values of an independent real-gas library after ASHRAE's RP-1485, as its manual prints them.
    @ParameterizedTest
    @CsvSource({"0, 1.2044777", "0.7, 1.1971436"})
    void densityAgreesWithAnIndependentLibrary(double humidity, double density) {
        assertThat(air(20, 101325, humidity).densityKgPerM3()).isCloseTo(density, within(1e-4));
    }

    /// Intermediate values of the CIPM formula at 20 °C, 101 325 Pa, 50 %, from the same constants.
    @Test
    void stepsOfTheCipmFormulaAreRight() {
        var one = air(20, 101325, 0.5);
        assertThat(one.saturationByCipm()).isCloseTo(2339.163, within(1e-3));
        assertThat(one.enhancement()).isCloseTo(1.0040256, within(1e-7));
        assertThat(one.vapourFraction()).isCloseTo(0.01158934, within(1e-8));
        assertThat(one.compressibility()).isCloseTo(0.99961477, within(1e-8));
    }

    /// Moist ideal gases with Magnus's formula; computed apart from this code.
    @ParameterizedTest
    @CsvSource({
        "20, 101325, 0.5, 1.19887",
        "30, 100000, 0.6, 1.13813",
        "35, 101325, 0.9, 1.12391",
        "20, 101325, 0, 1.20411"
    })
    void idealGasesGiveTheDensityOutsideThatRange(double celsius, double pascal, double humidity, double density) {
        assertThat(air(celsius, pascal, humidity).densityOfIdealGases()).isCloseTo(density, within(1e-5));
    }

    /// Magnus's formula with the constants of Sonntag (1990), in hectopascal.
    @ParameterizedTest
    @CsvSource({"0, 6.1120", "10, 12.2603", "20, 23.3260", "30, 42.3372", "40, 73.6746"})
    void saturationIsThatOfMagnus(double celsius, double hectopascal) {
        assertThat(Air.saturationByMagnus(celsius) / 100).isCloseTo(hectopascal, within(1e-4));
    }

    /// OIML R 111-1 (2004), E.3.1: its approximation at 20 °C, 1013.25 hPa, 50 %, from memory.
    @Test
    void densityAgreesWithTheApproximationOfLegalMetrology() {
        double oiml = (0.34848 * 1013.25 - 0.009 * 50 * Math.exp(0.061 * 20)) / 293.15;
        assertThat(air(20, 101325, 0.5).densityKgPerM3()).isCloseTo(oiml, within(1e-4));
    }

    /// ISO 2533, geopotential heights; 1000 m as an aerospace toolbox's manual prints it.
    @ParameterizedTest
    @CsvSource({
        "0, 288.15, 101325, 1.22500",
        "500, 284.90, 95460.8, 1.16727",
        "1000, 281.65, 89874.6, 1.11164",
        "1500, 278.40, 84556.0, 1.05807",
        "2000, 275.15, 79495.2, 1.00649"
    })
    void standardAtmosphereIsThatOfIso2533(double height, double kelvin, double pascal, double density) {
        assertThat(StandardAtmosphere.temperatureK(height)).isCloseTo(kelvin, within(5e-3));
        assertThat(StandardAtmosphere.pressurePa(height)).isCloseTo(pascal, within(0.1));
        var dry = new Air(kelvin, StandardAtmosphere.pressurePa(height), 0);
        assertThat(dry.densityOfIdealGases()).isCloseTo(density, within(1e-5));
    }

    /// ISO 2533 at 1000 m of geometric height.
    @Test
    void geometricHeightIsTurnedIntoGeopotential() {
        double height = StandardAtmosphere.geopotentialM(1000);
        assertThat(StandardAtmosphere.pressurePa(height)).isCloseTo(89876.3, within(0.1));
    }

    /// WGS 84: normal gravity; 5000 m at 55° as an aerospace toolbox's manual prints it (9.7997).
    @ParameterizedTest
    @CsvSource({
        "0, 0, 9.7803253",
        "45, 0, 9.8061978",
        "90, 0, 9.8321849",
        "40, 0, 9.8016969",
        "40, 1500, 9.797070",
        "55, 5000, 9.799667"
    })
    void gravityIsThatOfWgs84(double latitude, double height, double expected) {
        assertThat(Gravity.normalMps2(latitude, height)).isCloseTo(expected, within(1e-6));
    }

    /// WGS 84, derived constant k of Somigliana's formula.
    @Test
    void somiglianasConstantIsDerivedFromTheEllipsoid() {
        assertThat(Gravity.SOMIGLIANA).isCloseTo(0.00193185265, within(1e-11));
    }
}
