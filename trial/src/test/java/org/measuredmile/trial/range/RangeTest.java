package org.measuredmile.trial.range;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.trial.GivenDay.figure;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.GivenDay;
import org.measuredmile.trial.Outcome;

/// Rides of known length and energy, by hand and by recordings.
class RangeTest {
    private static final Instant BEGIN = Instant.parse("2031-05-14T08:00:00Z");
    private static final String THROTTLE = " level=throttle levelRole=throttle";

    private static GivenDay day(String ended) {
        return GivenDay.of(new Range())
                .claims("battery-energy", "500", "Wh")
                .run("g", "drive=throttle", "")
                .reading("g", "ended", ended);
    }

    private static final int[][] STANDS = {{540, 600}, {1000, 1090}, {1700, 1730}, {2500, 2620}, {3200, 3260}};

    private static boolean rides(int second) {
        for (int[] stand : STANDS) {
            if (second >= stand[0] && second < stand[1]) {
                return false;
            }
        }
        return true;
    }

    /// Riding at 6 m/s but for five stands of 360 s in all; one sample a second.
    private static Recording ride(String name, int fromS, int toS) {
        int count = toS - fromS;
        double[] times = new double[count];
        double[] speeds = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = i;
            speeds[i] = rides(fromS + i) ? 6 : 0;
        }
        return recording(name, fromS, new Channel(ChannelKind.SPEED, "v", "m/s", new Channel.Series(times, speeds)));
    }

    /// 40 V, and 5 A while riding, on a clock that is fast by so much.
    private static Recording log(String name, int seconds, int fastS) {
        double[] times = new double[seconds];
        double[] volts = new double[seconds];
        double[] amperes = new double[seconds];
        for (int i = 0; i < seconds; i++) {
            times[i] = i;
            volts[i] = 40;
            amperes[i] = rides(i) ? 5 : 0;
        }
        return recording(
                name,
                fastS,
                new Channel(ChannelKind.VOLTAGE, "u", "V", new Channel.Series(times, volts)),
                new Channel(ChannelKind.CURRENT, "i", "A", new Channel.Series(times, amperes)));
    }

    private static Recording recording(String name, double fromS, Channel... channels) {
        double[] times = channels[0].timesS();
        return new Recording(
                name,
                Format.DELIMITED,
                "",
                Optional.of(BEGIN.plusMillis(Math.round(fromS * 1000))),
                true,
                times.length,
                times,
                List.of(new Segment(0, times[times.length - 1])),
                List.of(channels),
                new TreeMap<>(),
                List.of());
    }

    private static List<String> codes(Outcome outcome) {
        return outcome.findings().stream().map(Finding::code).toList();
    }

    private static List<String> keys(Outcome outcome) {
        return outcome.figures().stream().map(one -> one.key().text()).toList();
    }

    /// Hand arithmetic: 0.50 kWh over 42.0 km at 0.30 a kWh are 0.15/42 km = 0.357 a hundred kilometres; by a log
    /// of 0.435 kWh over the charger's 0.87 as much. The price counts as exact.
    @Test
    void aPriceOfEnergyGivesTheCostOfTheWay() {
        var ride = day("assistance-ended").reading("g", "distance", "42.0 km").reading("g", "wall-energy", "0.50 kWh");
        assertThat(keys(ride.reduced())).noneMatch(one -> one.contains("cost"));
        var outcome = ride.reading("", "energy-price", "0.30 EUR/kWh").reduced();
        var cost = figure(outcome, "range.cost-per-distance" + THROTTLE + " price=0.3-EUR");
        assertThat(cost.value()).isCloseTo(0.15 / 42_000, within(1e-12));
        assertThat(cost.assumed()).anyMatch(one -> one.contains("0.30 EUR/kWh"));
        var wall = figure(outcome, "range.wall-energy-per-distance" + THROTTLE);
        assertThat(cost.thisDay().standard() / cost.value())
                .isCloseTo(wall.thisDay().standard() / wall.value(), within(1e-9));
    }

    @Test
    void withoutAWallMeterTheLogAndTheChargerGiveTheCost() {
        var outcome = day("assistance-ended")
                .reading("g", "distance", "20.0 km")
                .reading("", "energy-price", "0.30 EUR/kWh")
                .recording(log("battery.csv", 3000, 0), "", "g")
                .reduced();
        var spent = figure(outcome, "range.energy-per-distance" + THROTTLE);
        var cost = figure(outcome, "range.cost-per-distance" + THROTTLE + " price=0.3-EUR");
        assertThat(cost.value()).isCloseTo(spent.value() / 0.87 * 0.30 / 3.6e6, within(1e-12));
        assertThat(cost.thisDay().standard() / cost.value())
                .isGreaterThan(spent.thisDay().standard() / spent.value());
    }

    @Test
    void aPriceAloneGivesNoCost() {
        var outcome = day("assistance-ended")
                .reading("g", "distance", "42.0 km")
                .reading("", "energy-price", "0.30 EUR/kWh")
                .reduced();
        assertThat(keys(outcome)).noneMatch(one -> one.contains("cost"));
    }

    /// Hand arithmetic: 42.0 km in 7000 s are 6 m/s; 0.50 kWh · 0.87 / 42 km = 10.357 Wh/km = 37.286 J/m; 0.435
    /// kWh of 0.5 kWh are 0.87.
    @Test
    void aRideByHandGivesEveryFigureThatItCanCarry() {
        var outcome = day("assistance-ended")
                .reading("g", "distance", "42.0 km")
                .reading("g", "riding-time", "7000 s")
                .reading("g", "wall-energy", "0.50 kWh")
                .reading("g", "ascent", "80 m")
                .reading("g", "stops", "12")
                .wind(1.5)
                .reduced();
        assertThat(figure(outcome, "range.distance" + THROTTLE).value()).isCloseTo(42_000, within(1e-6));
        assertThat(figure(outcome, "range.mean-speed" + THROTTLE).value()).isCloseTo(6, within(1e-9));
        var cost = figure(outcome, "range.energy-per-distance" + THROTTLE);
        assertThat(cost.value()).isCloseTo(37.286, within(1e-3));
        assertThat(cost.assumed()).anyMatch(one -> one.contains("charger"));
        assertThat(figure(outcome, "range.usable-share" + THROTTLE).value()).isCloseTo(0.87, within(1e-9));
        var reference = figure(outcome, "range.distance at=reference" + THROTTLE);
        assertThat(reference.value()).isGreaterThan(42_000);
        assertThat(reference.anyDay().interval95().halfWidth())
                .isGreaterThan(figure(outcome, "range.distance" + THROTTLE)
                        .anyDay()
                        .interval95()
                        .halfWidth());
        assertThat(reference.narrows()).extracting(Figure.Narrowing::what).contains("a coast-down of this bike");
        assertThat(reference.narrows().getFirst().intervalThen().halfWidth())
                .isLessThan(reference.anyDay().interval95().halfWidth());
        assertThat(keys(outcome)).contains("range.gain-at-tenth-slower" + THROTTLE);
    }

    /// Two recordings and a log whose clock is eleven minutes fast: 3600 s hold 3240 s of riding at 6 m/s, less
    /// half a step at each stop; 200 W over them.
    @Test
    void recordingsAreJoinedAndALogOnAnotherClockIsLaidOnThem() {
        var outcome = day("assistance-ended")
                .recording(ride("a.csv", 0, 1800), "", "g")
                .recording(ride("b.csv", 1800, 3600), "", "g")
                .recording(log("battery.csv", 3600, 660), "", "g")
                .reduced();
        double metres = figure(outcome, "range.distance" + THROTTLE).value();
        assertThat(metres).isCloseTo(3240 * 6, within(40.0));
        assertThat(figure(outcome, "range.energy" + THROTTLE).value()).isCloseTo(3240 * 200, within(2500.0));
        assertThat(outcome.findings())
                .anySatisfy(finding -> assertThat(finding.message()).contains("another clock", "660 s fast"));
        assertThat(figure(outcome, "range.energy-at-speed band=20-25-kmh" + THROTTLE)
                        .value())
                .isCloseTo(200 / 6.0, within(0.5));
        assertThat(outcome.runs().getFirst().trace()).isPresent();
    }

    @Test
    void aStretchThatNobodyRecordedLeavesNoFigureWhereItIsLong() {
        var outcome = day("assistance-ended")
                .recording(ride("a.csv", 0, 1800), "", "g")
                .recording(ride("b.csv", 2400, 3600), "", "g")
                .reduced();
        assertThat(codes(outcome)).contains("gap-without-positions");
        assertThat(keys(outcome)).contains("range.distance" + THROTTLE);
    }

    @Test
    void aLogOfHalfTheRideIsNotUsedAndTheWallStandsIn() {
        var outcome = day("display-empty")
                .recording(ride("a.csv", 0, 3600), "", "g")
                .recording(log("battery.csv", 2400, 0), "", "g")
                .reading("g", "wall-energy", "0.40 kWh")
                .reduced();
        assertThat(codes(outcome)).contains("battery-log-incomplete");
        assertThat(figure(outcome, "range.energy" + THROTTLE).value()).isCloseTo(0.4 * 3.6e6 * 0.87, within(1.0));
    }

    @Test
    void anEnergyThatOnlyTheNominalTellsGivesNoCost() {
        var outcome = day("assistance-ended").reading("g", "distance", "42 km").reduced();
        assertThat(keys(outcome)).contains("range.distance" + THROTTLE).noneMatch(key -> key.contains("energy"));
        assertThat(codes(outcome)).contains("no-reference");
    }

    /// Hand arithmetic: 288 kJ of 465 Wh·3600 are 0.172: too little. Of 1.08 MJ 0.645: 30 km / 0.645 = 46.5 km.
    @Test
    void anEarlyStopIsPublishedAsAtLeastAndPredictedOnlyWhereEnergyCarriesIt() {
        var little = day("stopped-early")
                .reading("g", "distance", "8 km")
                .reading("g", "laps", "4")
                .reading("g", "wall-energy", "0.092 kWh")
                .reduced();
        assertThat(keys(little)).contains("range.at-least" + THROTTLE).noneMatch(key -> key.contains("predicted"));
        assertThat(little.findings())
                .anySatisfy(
                        finding -> assertThat(finding.message()).contains("17 % of the battery used", "at least 30 %"));
        var enough = day("stopped-early")
                .reading("g", "distance", "30 km")
                .reading("g", "laps", "6")
                .reading("g", "wall-energy", "0.345 kWh")
                .reduced();
        assertThat(keys(enough)).noneMatch(key -> key.startsWith("range.distance"));
        assertThat(figure(enough, "range.predicted" + THROTTLE).value()).isCloseTo(46_478, within(20.0));
        assertThat(figure(enough, "range.at-least" + THROTTLE).value()).isCloseTo(30_000, within(1e-6));
    }

    @Test
    void withoutEnergyNothingIsPredictedWhateverTheDisplaySays() {
        var outcome = day("stopped-early")
                .reading("g", "distance", "30 km")
                .reading("g", "laps", "6")
                .reading("g", "state-of-charge", "20 %")
                .reduced();
        assertThat(keys(outcome)).containsExactly("range.at-least" + THROTTLE);
        assertThat(codes(outcome)).contains("no-prediction");
    }

    @Test
    void pedallingWithoutAPowerMeterIsToldToBeWideAtReference() {
        var outcome = GivenDay.of(new Range())
                .bikeLevels(5)
                .run("g", "level=5", "")
                .reading("g", "ended", "assistance-ended")
                .reading("g", "distance", "60 km")
                .reading("g", "riding-time", "9000 s")
                .reading("g", "ascent", "120 m")
                .reading("g", "stops", "20")
                .wind(1)
                .reduced();
        var reference = figure(outcome, "range.distance at=reference level=5 levelRole=highest");
        assertThat(reference.thisDay().interval95().halfWidth() / reference.value())
                .isGreaterThan(0.2);
        assertThat(reference.narrows()).extracting(Figure.Narrowing::what).contains("a power meter on the ride");
    }

    @Test
    void aLogAndAWallMeterThatCannotBothBeRightAreNamed() {
        var outcome = day("assistance-ended")
                .recording(ride("a.csv", 0, 3600), "", "g")
                .recording(log("battery.csv", 3600, 0), "", "g")
                .reading("g", "wall-energy", "0.60 kWh")
                .reduced();
        assertThat(codes(outcome)).contains("energies-disagree");
    }

    /// Laps as the recorder marked them carry the prediction.
    @Test
    void lapsMarkedInTheRecordingAreCounted() {
        var marked = ride("a.csv", 0, 3600)
                .marking(List.of(
                        new Mark(Mark.Kind.LAP, 0, 1200, ""),
                        new Mark(Mark.Kind.LAP, 1200, 2400, ""),
                        new Mark(Mark.Kind.LAP, 2400, 3599, "")));
        var outcome = day("stopped-early")
                .recording(marked, "", "g")
                .recording(log("battery.csv", 3600, 0), "", "g")
                .reading("g", "usable-energy", "300 Wh")
                .reduced();
        assertThat(figure(outcome, "range.predicted" + THROTTLE).value())
                .isCloseTo(3240 * 6 * 300 * 3600.0 / (3240 * 200), within(300.0));
    }

    @Test
    void aRideWhosePartHasNoDateDoesNotCountUnlessItsDistanceWasWrittenDown() {
        var dated = ride("b.csv", 1800, 3600);
        var undated = new Recording(
                "b.csv",
                Format.DELIMITED,
                "",
                Optional.empty(),
                false,
                dated.samples(),
                dated.timesS(),
                dated.segments(),
                dated.channels(),
                new TreeMap<>(),
                List.of());
        var day = day("assistance-ended")
                .recording(ride("a.csv", 0, 1800), "", "g")
                .recording(undated, "", "g");
        assertThat(day.reduced().runs().getFirst().reason()).contains("b.csv", "part of the way is missing");
        assertThat(day.reduced().figures()).isEmpty();
        var typed = day.reading("g", "distance", "19.4 km").reduced();
        assertThat(figure(typed, "range.distance" + THROTTLE).value()).isCloseTo(19_400, within(1e-6));
    }
}
