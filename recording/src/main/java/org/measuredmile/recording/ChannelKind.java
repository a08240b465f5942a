package org.measuredmile.recording;

import org.measuredmile.quantity.QuantityKind;

/// What a channel holds. A closed list of what the trials can use, and [#OTHER] for whatever else was written down,
/// which is kept with its own name and never dropped.
///
/// Unit: every channel's values are in the SI unit of `quantity`; latitude, longitude and course in degrees are the
/// exception that the geodesy library and people share, and their kind says so.
public enum ChannelKind {
    /// Degrees north, WGS-84.
    LATITUDE("latitude", QuantityKind.ANGLE, true),
    /// Degrees east, WGS-84.
    LONGITUDE("longitude", QuantityKind.ANGLE, true),
    /// Degrees clockwise from true north.
    COURSE("course", QuantityKind.ANGLE, true),
    ALTITUDE("altitude", QuantityKind.LENGTH, false),
    /// Speed over ground by a satellite receiver (Doppler), or where the source is not stated.
    SPEED("speed", QuantityKind.SPEED, false),
    /// Speed by a wheel's turning.
    WHEEL_SPEED("wheel-speed", QuantityKind.SPEED, false),
    /// Distance counted by the instrument since its start.
    DISTANCE("distance", QuantityKind.DISTANCE, false),
    ACCELERATION_X("acceleration-x", QuantityKind.ACCELERATION, false),
    ACCELERATION_Y("acceleration-y", QuantityKind.ACCELERATION, false),
    ACCELERATION_Z("acceleration-z", QuantityKind.ACCELERATION, false),
    TURN_RATE_X("turn-rate-x", QuantityKind.ANGULAR_RATE, false),
    TURN_RATE_Y("turn-rate-y", QuantityKind.ANGULAR_RATE, false),
    TURN_RATE_Z("turn-rate-z", QuantityKind.ANGULAR_RATE, false),
    CADENCE("cadence", QuantityKind.FREQUENCY, false),
    HEART_RATE("heart-rate", QuantityKind.FREQUENCY, false),
    /// The rider's own power.
    POWER("power", QuantityKind.POWER, false),
    FORCE("force", QuantityKind.FORCE, false),
    AIR_TEMPERATURE("temperature", QuantityKind.TEMPERATURE, false),
    PRESSURE("pressure", QuantityKind.PRESSURE, false),
    HUMIDITY("humidity", QuantityKind.RATIO, false),
    WIND_SPEED("wind-speed", QuantityKind.SPEED, false),
    STATE_OF_CHARGE("state-of-charge", QuantityKind.RATIO, false),
    VOLTAGE("voltage", QuantityKind.VOLTAGE, false),
    CURRENT("current", QuantityKind.CURRENT, false),
    /// A control lever's switch: 0 released, 1 pulled.
    LEVER("lever", QuantityKind.RATIO, false),
    SATELLITES("satellites", QuantityKind.COUNT, false),
    DILUTION_OF_PRECISION("hdop", QuantityKind.RATIO, false),
    OTHER("other", QuantityKind.RATIO, false);

    private final String id;
    private final QuantityKind quantity;
    private final boolean inDegrees;

    ChannelKind(String id, QuantityKind quantity, boolean inDegrees) {
        this.id = id;
        this.quantity = quantity;
        this.inDegrees = inDegrees;
    }

    /// The word used in JSON and on pages.
    public String id() {
        return id;
    }

    public QuantityKind quantity() {
        return quantity;
    }

    /// The symbol of the unit that values are in.
    public String unitSymbol() {
        return inDegrees ? "°" : quantity.si().symbol();
    }
}
