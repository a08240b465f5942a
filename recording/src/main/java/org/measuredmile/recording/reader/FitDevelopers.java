package org.measuredmile.recording.reader;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.ChannelKind;

/// The fields that applications add to an instrument's own messages, as the file describes them.
///
/// A field becomes a channel of its own kind where its name or the field it stands for says what it is and its unit can
/// be of that kind; else it is kept under its own name and unit.
final class FitDevelopers {
    /// The messages that describe applications and their fields.
    static final int DESCRIPTION = 206;

    static final int APPLICATION = 207;

    /// More than any real file has, and few enough that a made-up one cannot fill memory with columns.
    private static final int MOST = 512;

    private static final int RECORD = 20;

    private static final Map<String, ChannelKind> NAMED = Map.ofEntries(
            Map.entry("speed", ChannelKind.SPEED),
            Map.entry("wheel speed", ChannelKind.WHEEL_SPEED),
            Map.entry("distance", ChannelKind.DISTANCE),
            Map.entry("altitude", ChannelKind.ALTITUDE),
            Map.entry("elevation", ChannelKind.ALTITUDE),
            Map.entry("heart rate", ChannelKind.HEART_RATE),
            Map.entry("cadence", ChannelKind.CADENCE),
            Map.entry("power", ChannelKind.POWER),
            Map.entry("temperature", ChannelKind.AIR_TEMPERATURE),
            Map.entry("air temperature", ChannelKind.AIR_TEMPERATURE),
            Map.entry("humidity", ChannelKind.HUMIDITY),
            Map.entry("pressure", ChannelKind.PRESSURE),
            Map.entry("wind speed", ChannelKind.WIND_SPEED),
            Map.entry("state of charge", ChannelKind.STATE_OF_CHARGE),
            Map.entry("battery voltage", ChannelKind.VOLTAGE),
            Map.entry("battery current", ChannelKind.CURRENT));

    private static final Map<String, String> PLAIN_UNITS = Map.ofEntries(
            Map.entry("watt", "w"),
            Map.entry("watts", "w"),
            Map.entry("meter", "m"),
            Map.entry("meters", "m"),
            Map.entry("metre", "m"),
            Map.entry("metres", "m"),
            Map.entry("kmph", "km/h"),
            Map.entry("celsius", "°c"),
            Map.entry("volt", "v"),
            Map.entry("volts", "v"),
            Map.entry("amps", "a"));

    private final Map<Integer, Described> described = new HashMap<>();
    private final Map<Integer, String> applications = new HashMap<>();

    /// A field of an application: its base type, and what its numbers mean.
    record Described(int baseType, String application, FitField field) {}

    void takeApplication(FitMessage message) {
        int index = message.whole(3, -1);
        if (index >= 0) {
            String id = message.digits(1);
            applications.put(index, id.isEmpty() ? "application " + index : "application " + id);
        }
    }

    /// Whether the message described a field.
    boolean takeDescription(FitMessage message) {
        int application = message.whole(0, -1);
        int number = message.whole(1, -1);
        int baseType = message.whole(2, -1);
        if (application < 0 || number < 0 || baseType < 0 || described.size() >= MOST) {
            return false;
        }
        String name = message.text(3);
        double scale = message.number(6);
        double offset = message.number(7);
        int stands = message.whole(14, -1) == RECORD || message.room(14) == 0 ? message.whole(15, -1) : -1;
        FitField field = field(
                name.isEmpty() ? "developer-" + application + "-" + number : name,
                message.text(8),
                new Linear(Double.isNaN(scale) || scale == 0 ? 1 : scale, Double.isNaN(offset) ? 0 : offset),
                stands);
        String by = applications.getOrDefault(application, "application " + application);
        described.put(key(application, number), new Described(baseType, by, field));
        return true;
    }

    Optional<Described> find(int application, int number) {
        return Optional.ofNullable(described.get(key(application, number)));
    }

    private static int key(int application, int number) {
        return (application << 8) | number;
    }

    private record Linear(double scale, double offset) {}

    private static FitField field(String name, String unit, Linear linear, int stands) {
        Optional<ChannelKind> kind = stands >= 0
                ? FitField.like(stands).map(FitField::kind).filter(each -> each != ChannelKind.OTHER)
                : Optional.empty();
        kind = kind.or(() -> Optional.ofNullable(
                NAMED.get(name.toLowerCase(Locale.ROOT).replace('_', ' ').strip())));
        String plain = unit.toLowerCase(Locale.ROOT).strip();
        Optional<Unit> written = kind.flatMap(each -> HeadUnit.find(
                PLAIN_UNITS.getOrDefault(plain, plain), each.quantity().si()));
        if (kind.isEmpty() || written.isEmpty()) {
            return new FitField(-1, name, ChannelKind.OTHER, unit, linear.scale, -linear.offset);
        }
        double addend = written.get().toSi(-linear.offset);
        double factor = written.get().toSi(1) - written.get().toSi(0);
        return new FitField(-1, name, kind.get(), unit, linear.scale / factor, addend);
    }
}
