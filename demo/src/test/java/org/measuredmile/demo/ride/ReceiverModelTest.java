package org.measuredmile.demo.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.recording.reader.Readers;

class ReceiverModelTest {
    private static final RoadLine ROAD = new RoadLine(50.6, -2.4, 70, 5);
    private static final Instant START = Instant.parse("2031-04-14T09:00:00Z");

    private static RandomGenerator random(long seed) {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    }

    private static List<ReceiverModel.Epoch> steady(ReceiverModel model, double durationS, long seed) {
        return model.watch(TrueRide.of(_ -> 6, durationS), ROAD, random(seed));
    }

    @Test
    void whatIsLoggedInAnyFormatReadsBackAsTheReceiverSaidIt() throws IOException {
        var epochs = steady(ReceiverModel.tenHertz().droppingOut(6), 120, 3);
        var log = new ReceiverLog(START, epochs);
        long fixes = epochs.stream().filter(ReceiverModel.Epoch::hasFix).count();
        assertThat(fixes).isBetween(1100L, 1200L);

        for (var file : List.of(
                new Named("a.csv", log.delimited()), new Named("a.gpx", log.gpx()), new Named("a.nmea", log.nmea()))) {
            Recording read = decode(file);
            Channel speed = read.channel(ChannelKind.SPEED).orElseThrow();
            assertThat(read.start()).as(file.name()).contains(START);
            assertThat(speed.size()).as(file.name()).isEqualTo((int) fixes);
            // The coarsest log writes steps of 0.01 km/h.
            assertThat(speed.value(0))
                    .as(file.name())
                    .isCloseTo(epochs.getFirst().speedMps(), within(0.0015));
            assertThat(read.channel(ChannelKind.LATITUDE).orElseThrow().value(0))
                    .isCloseTo(epochs.getFirst().spot().latitudeDegrees(), within(1e-6));
        }
    }

    private record Named(String name, byte[] bytes) {}

    private static Recording decode(Named file) throws IOException {
        var decoding = Readers.decode(file.name(), new ByteArrayInputStream(file.bytes()));
        assertThat(decoding).as(file.name()).isInstanceOf(Decoding.Decoded.class);
        return ((Decoding.Decoded) decoding).recording();
    }

    @Test
    void theNoiseIsAsWideAsStatedAndCorrelatedInTime() {
        var epochs = steady(ReceiverModel.tenHertz(), 2000, 11);
        double[] error =
                epochs.stream().mapToDouble(epoch -> epoch.speedMps() - 6).toArray();
        double variance = 0;
        double lagged = 0;
        for (int i = 1; i < error.length; i++) {
            variance += error[i] * error[i] / error.length;
            lagged += error[i] * error[i - 1] / error.length;
        }
        // White 0.05 and correlated 0.05 m/s: variance 0.005; one step of 0.1 s keeps 0.0025·exp(−0.1/0.4) =
        // 0.001947.
        assertThat(variance).isCloseTo(0.005, within(0.0003));
        assertThat(lagged).isCloseTo(0.001947, within(0.0003));
    }

    @Test
    void aLagAndADelayShiftARampByTheirSum() {
        var ramp = TrueRide.of(timeS -> 2 + 0.5 * timeS, 20);
        var model = new ReceiverModel(10, ReceiverModel.Noise.NONE, new ReceiverModel.Filter.Lag(0.3), 0.2, 0);
        var average =
                new ReceiverModel(10, ReceiverModel.Noise.NONE, new ReceiverModel.Filter.MovingAverage(0.4), 0.2, 0);

        // A first-order lag trails a ramp by its time constant, a moving average by half its width.
        assertThat(model.watch(ramp, ROAD, random(1)).get(150).speedMps()).isCloseTo(9.5 - 0.25, within(0.003));
        assertThat(average.watch(ramp, ROAD, random(1)).get(150).speedMps()).isCloseTo(9.5 - 0.2, within(0.003));
    }

    @Test
    void theSameSeedGivesTheSameBytes() {
        var once = new ReceiverLog(START, steady(ReceiverModel.fiveHertz(), 60, 5)).nmea();
        var again = new ReceiverLog(START, steady(ReceiverModel.fiveHertz(), 60, 5)).nmea();

        assertThat(again).isEqualTo(once);
    }

    @Test
    void theRoadBackEndsWhereTheRoadOutBegan() {
        RoadLine.Spot end = ROAD.back(400).at(400, 0);

        assertThat(end.latitudeDegrees()).isCloseTo(ROAD.latitudeDegrees(), within(1e-7));
        assertThat(end.longitudeDegrees()).isCloseTo(ROAD.longitudeDegrees(), within(1e-7));
    }
}
