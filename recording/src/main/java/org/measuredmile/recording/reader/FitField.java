package org.measuredmile.recording.reader;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.ChannelKind;

/// What a field of the record message means: the channel it becomes and how its numbers become values.
///
/// Unit: value = number / divisor + addend, which is in the unit of `kind`, or in `unit` where the kind is OTHER.
/// Source: the published profile's record message (scales, offsets and units of its fields), from memory, held to real
/// files and to two of them as another library decodes them.
record FitField(int number, String name, ChannelKind kind, String unit, double divisor, double addend) {
    static final int LATITUDE = 0;
    static final int LONGITUDE = 1;
    static final int PACKED_SPEED_DISTANCE = 8;
    static final int FRACTIONAL_CADENCE = 53;
    static final int BATTERY = 81;
    static final double DEGREES_A_SEMICIRCLE = 180.0 / 0x8000_0000L;

    private static final double ZERO_CELSIUS_K = 273.15;

    private static final List<FitField> RECORD = List.of(
            new FitField(2, "altitude", ChannelKind.ALTITUDE, "m", 5, -500),
            new FitField(3, "heart_rate", ChannelKind.HEART_RATE, "bpm", 60, 0),
            new FitField(4, "cadence", ChannelKind.CADENCE, "rpm", 60, 0),
            new FitField(5, "distance", ChannelKind.DISTANCE, "m", 100, 0),
            new FitField(6, "speed", ChannelKind.SPEED, "m/s", 1000, 0),
            new FitField(7, "power", ChannelKind.POWER, "W", 1, 0),
            other(9, "grade", "%", 100),
            other(10, "resistance", "", 1),
            other(11, "time_from_course", "s", 1000),
            other(12, "cycle_length", "m", 100),
            new FitField(13, "temperature", ChannelKind.AIR_TEMPERATURE, "°C", 1, ZERO_CELSIUS_K),
            other(18, "cycles", "", 1),
            other(19, "total_cycles", "", 1),
            other(28, "compressed_accumulated_power", "W", 1),
            other(29, "accumulated_power", "W", 1),
            other(30, "left_right_balance", "", 1),
            other(31, "gps_accuracy", "m", 1),
            other(32, "vertical_speed", "m/s", 1000),
            other(33, "calories", "kcal", 1),
            other(39, "vertical_oscillation", "mm", 10),
            other(40, "stance_time_percent", "%", 100),
            other(41, "stance_time", "ms", 10),
            other(42, "activity_type", "", 1),
            other(43, "left_torque_effectiveness", "%", 2),
            other(44, "right_torque_effectiveness", "%", 2),
            other(45, "left_pedal_smoothness", "%", 2),
            other(46, "right_pedal_smoothness", "%", 2),
            other(47, "combined_pedal_smoothness", "%", 2),
            other(48, "time128", "s", 128),
            other(49, "stroke_type", "", 1),
            other(50, "zone", "", 1),
            other(51, "ball_speed", "m/s", 100),
            new FitField(52, "cadence", ChannelKind.CADENCE, "rpm", 256 * 60.0, 0),
            new FitField(FRACTIONAL_CADENCE, "cadence", ChannelKind.CADENCE, "rpm", 128 * 60.0, 0),
            other(62, "device_index", "", 1),
            other(67, "left_pedal_offset", "mm", 1),
            other(68, "right_pedal_offset", "mm", 1),
            new FitField(73, "speed", ChannelKind.SPEED, "m/s", 1000, 0),
            new FitField(78, "altitude", ChannelKind.ALTITUDE, "m", 5, -500),
            other(BATTERY, "battery_soc", "%", 2),
            other(82, "motor_power", "W", 1),
            other(83, "vertical_ratio", "%", 100),
            other(84, "stance_time_balance", "%", 100),
            other(85, "step_length", "mm", 10),
            other(87, "cycle_length16", "m", 100),
            new FitField(91, "absolute_pressure", ChannelKind.PRESSURE, "Pa", 1, 0),
            other(92, "depth", "m", 1000),
            other(99, "respiration_rate", "/min", 1),
            other(108, "enhanced_respiration_rate", "/min", 100),
            other(114, "grit", "", 1),
            other(115, "flow", "", 1),
            other(117, "ebike_travel_range", "km", 1),
            new FitField(118, "ebike_battery_level", ChannelKind.STATE_OF_CHARGE, "%", 100, 0),
            other(119, "ebike_assist_mode", "", 1),
            other(120, "ebike_assist_level_percent", "%", 1),
            other(139, "core_temperature", "°C", 100));

    private static final FitField[] BY_NUMBER = byNumber();

    private static FitField other(int number, String name, String unit, double divisor) {
        return new FitField(number, name, ChannelKind.OTHER, unit, divisor, 0);
    }

    private static FitField[] byNumber() {
        FitField[] all = new FitField[256];
        Arrays.setAll(all, number -> other(number, "field-" + number, "", 1));
        RECORD.forEach(field -> all[field.number] = field);
        return all;
    }

    /// The field with a number; one that nobody has published keeps its number as its name and its values as
    /// written.
    static FitField of(int number) {
        return BY_NUMBER[number];
    }

    /// Whether the number is one of those published.
    static boolean isKnown(int number) {
        return number <= LONGITUDE
                || number == PACKED_SPEED_DISTANCE
                || number == FitDefinition.TIMESTAMP
                || RECORD.stream().anyMatch(field -> field.number == number);
    }

    /// The published field that an application says its own one stands for.
    static Optional<FitField> like(int number) {
        return RECORD.stream().filter(field -> field.number == number).findFirst();
    }
}
