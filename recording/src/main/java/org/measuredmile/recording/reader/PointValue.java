package org.measuredmile.recording.reader;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.ChannelKind;

/// A value that a track point of an XML file may carry: what it is and the unit that is usual for it.
///
/// Source: GPX 1.0 schema (speed in m/s, course in degrees), the public schemas of track point and activity extensions
/// (heart rate and cadence a minute, watts, °C); the other spellings are common practice, no source.
record PointValue(ChannelKind kind, Unit unit) {
    private static final Map<String, PointValue> BY_NAME = Map.ofEntries(
            Map.entry("speed", new PointValue(ChannelKind.SPEED, Unit.METRE_PER_SECOND)),
            Map.entry("course", new PointValue(ChannelKind.COURSE, Unit.ONE)),
            Map.entry("hr", new PointValue(ChannelKind.HEART_RATE, Unit.PER_MINUTE)),
            Map.entry("heartrate", new PointValue(ChannelKind.HEART_RATE, Unit.PER_MINUTE)),
            Map.entry("cad", new PointValue(ChannelKind.CADENCE, Unit.PER_MINUTE)),
            Map.entry("cadence", new PointValue(ChannelKind.CADENCE, Unit.PER_MINUTE)),
            Map.entry("runcadence", new PointValue(ChannelKind.CADENCE, Unit.PER_MINUTE)),
            Map.entry("power", new PointValue(ChannelKind.POWER, Unit.WATT)),
            Map.entry("watts", new PointValue(ChannelKind.POWER, Unit.WATT)),
            Map.entry("powerinwatts", new PointValue(ChannelKind.POWER, Unit.WATT)),
            Map.entry("atemp", new PointValue(ChannelKind.AIR_TEMPERATURE, Unit.DEGREE_CELSIUS)),
            Map.entry("temp", new PointValue(ChannelKind.AIR_TEMPERATURE, Unit.DEGREE_CELSIUS)),
            Map.entry("temperature", new PointValue(ChannelKind.AIR_TEMPERATURE, Unit.DEGREE_CELSIUS)),
            Map.entry("sat", new PointValue(ChannelKind.SATELLITES, Unit.ONE)),
            Map.entry("hdop", new PointValue(ChannelKind.DILUTION_OF_PRECISION, Unit.ONE)));

    static final PointValue ALTITUDE = new PointValue(ChannelKind.ALTITUDE, Unit.METRE);
    static final PointValue DISTANCE = new PointValue(ChannelKind.DISTANCE, Unit.METRE);
    static final PointValue HEART_RATE = new PointValue(ChannelKind.HEART_RATE, Unit.PER_MINUTE);
    static final PointValue CADENCE = new PointValue(ChannelKind.CADENCE, Unit.PER_MINUTE);

    /// What an element is by its name, wherever in a point and in whatever case it stands.
    static Optional<PointValue> named(String element) {
        PointValue asWritten = BY_NAME.get(element);
        return Optional.ofNullable(asWritten != null ? asWritten : BY_NAME.get(element.toLowerCase(Locale.ROOT)));
    }
}
