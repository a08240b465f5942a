package org.measuredmile.recording.day;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.ColumnSetting;

/// What a reading or a recording was taken with, and what is known of its errors.
///
/// Shape: `columns` say what the columns of its tables mean, where a person set it.
/// Unit: `resolution` in the SI unit of [Kind#quantity()]; `delayS` in seconds.
public record Instrument(
        String id,
        Kind kind,
        OptionalDouble resolution,
        Optional<Calibration> calibration,
        OptionalDouble delayS,
        Optional<FrameRate> frameRate,
        List<ColumnSetting> columns) {
    public Instrument {
        columns = List.copyOf(columns);
    }

    /// An instrument that writes no tables, or whose columns speak for themselves.
    public Instrument(
            String id,
            Kind kind,
            OptionalDouble resolution,
            Optional<Calibration> calibration,
            OptionalDouble delayS,
            OptionalDouble frameRateHz) {
        this(
                id,
                kind,
                resolution,
                calibration,
                delayS,
                frameRateHz.isPresent() ? Optional.of(FrameRate.ofHertz(frameRateHz.getAsDouble())) : Optional.empty(),
                List.of());
    }

    /// The same instrument with what its columns mean.
    public Instrument withColumns(List<ColumnSetting> these) {
        return new Instrument(id, kind, resolution, calibration, delayS, frameRate, these);
    }

    /// The instruments of the trade. The ids are those of day.yaml.
    public enum Kind {
        RECEIVER("receiver", QuantityKind.SPEED),
        WHEEL("wheel", QuantityKind.SPEED),
        TAPE("tape", QuantityKind.LENGTH),
        STOPWATCH("stopwatch", QuantityKind.TIME),
        CAMERA("camera", QuantityKind.TIME),
        SCALE("scale", QuantityKind.MASS),
        WALL_METER("wall-meter", QuantityKind.ENERGY),
        SOUND_METER("sound-meter", QuantityKind.SOUND_LEVEL),
        LIGHT_METER("light-meter", QuantityKind.ILLUMINANCE),
        PRESSURE_GAUGE("pressure-gauge", QuantityKind.PRESSURE),
        BATTERY_LOG("battery-log", QuantityKind.ENERGY);

        private final String id;
        private final QuantityKind quantity;

        Kind(String id, QuantityKind quantity) {
            this.id = id;
            this.quantity = quantity;
        }

        public String id() {
            return id;
        }

        public QuantityKind quantity() {
            return quantity;
        }
    }

    /// What a comparison with something better known gave: true value = factor · reading.
    ///
    /// Unit: `standardUncertainty` is that of the factor, so it is relative.
    public record Calibration(double factor, double standardUncertainty, Optional<LocalDate> date) {}

    /// The factor that readings are multiplied by; 1 without a calibration.
    public double factor() {
        return calibration.map(Calibration::factor).orElse(1.0);
    }
}
