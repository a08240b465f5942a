package org.measuredmile.recording.reader;

import java.util.Optional;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.ColumnMeaning;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;

/// Decides which unit a column's numbers are in where the file does not say.
///
/// Speed and distance are compared with the way between positions, or with each other; other kinds go by the size of
/// their numbers where only one unit makes sense, and stay unread (kind OTHER) where more than one does.
final class ColumnUnits {
    private static final double LONG_ENOUGH_M = 100;
    private static final Unit[] SPEED_UNITS = {
        Unit.METRE_PER_SECOND, Unit.KILOMETRE_PER_HOUR, Unit.MILE_PER_HOUR, Unit.KNOT
    };
    private static final Unit[] DISTANCE_UNITS = {Unit.METRE, Unit.KILOMETRE, Unit.MILE, Unit.FOOT};

    private final TableDistances distances;
    private final Remarks remarks;

    ColumnUnits(TableDistances distances, Remarks remarks) {
        this.distances = distances;
        this.remarks = remarks;
    }

    /// The meaning with its unit settled; `column` is the column's place in the table.
    ColumnMeaning settle(ColumnMeaning meaning, int column) {
        if (meaning.unit().isPresent() || meaning.role() != ColumnMeaning.Role.VALUE) {
            return meaning;
        }
        return switch (meaning.kind()) {
            case SPEED, WHEEL_SPEED -> speed(meaning, column);
            case DISTANCE -> distance(meaning, column);
            case ALTITUDE -> common(meaning, Unit.METRE);
            case AIR_TEMPERATURE -> common(meaning, middle(column) > 200 ? Unit.KELVIN : Unit.DEGREE_CELSIUS);
            case HEART_RATE, CADENCE -> common(meaning, Unit.PER_MINUTE);
            case POWER -> common(meaning, Unit.WATT);
            case VOLTAGE -> common(meaning, Unit.VOLT);
            case CURRENT -> common(meaning, Unit.AMPERE);
            case STATE_OF_CHARGE, HUMIDITY -> common(meaning, largest(column) > 1.5 ? Unit.PER_CENT : Unit.ONE);
            case PRESSURE -> pressure(meaning, middle(column));
            case ACCELERATION_X, ACCELERATION_Y, ACCELERATION_Z -> acceleration(meaning);
            case TURN_RATE_X, TURN_RATE_Y, TURN_RATE_Z -> turnRate(meaning);
            case FORCE, WIND_SPEED -> unknown(meaning);
            default -> meaning;
        };
    }

    private double middle(int column) {
        return distances.quantiles(column)[1];
    }

    private double largest(int column) {
        return distances.quantiles(column)[3];
    }

    private ColumnMeaning common(ColumnMeaning meaning, Unit unit) {
        return meaning.as(meaning.kind(), Optional.of(unit), "the usual unit; the file does not say");
    }

    private ColumnMeaning unknown(ColumnMeaning meaning) {
        remarks.add(Finding.warning(
                "unit-unknown",
                new Place(remarks.source(), meaning.name()),
                "the unit of \"" + Remarks.quoted(meaning.name())
                        + "\" is not stated and cannot be told from its numbers; kept as plain numbers",
                "write the unit in the head, like \"" + Remarks.quoted(meaning.name()) + " (unit)\""));
        return meaning.as(ChannelKind.OTHER, Optional.empty(), "unit not known");
    }

    private ColumnMeaning speed(ColumnMeaning meaning, int column) {
        TableDistances.Compared compared = distances.speedAgainstWay(column);
        if (compared.wayM() >= LONG_ENOUGH_M && compared.sum() > 0) {
            double ratio = compared.sum() / compared.wayM();
            Unit nearest = nearest(ratio, SPEED_UNITS);
            double off = ratio / nearest.fromSi(1);
            if (off > 0.75 && off < 1.33) {
                String because = "its sum over time is " + ShortNumber.of(ratio) + " times the way by " + compared.by();
                note(meaning, nearest, because, off < 0.94 || off > 1.06);
                return meaning.as(meaning.kind(), Optional.of(nearest), because);
            }
        }
        Unit assumed = distances.quantiles(column)[2] > 20 ? Unit.KILOMETRE_PER_HOUR : Unit.METRE_PER_SECOND;
        note(meaning, assumed, "by the size of its numbers alone", true);
        return meaning.as(meaning.kind(), Optional.of(assumed), "assumed by size");
    }

    private void note(ColumnMeaning meaning, Unit unit, String because, boolean unsure) {
        String said =
                "\"" + Remarks.quoted(meaning.name()) + "\" states no unit; read as " + unit.symbol() + ": " + because;
        Place place = new Place(remarks.source(), meaning.name());
        remarks.add(
                unsure
                        ? Finding.warning("unit-assumed", place, said, "write the unit in the head")
                        : Finding.note("unit-worked-out", place, said));
    }

    private static Unit nearest(double ratio, Unit[] among) {
        Unit best = among[0];
        for (Unit unit : among) {
            if (away(ratio, unit) < away(ratio, best)) {
                best = unit;
            }
        }
        return best;
    }

    /// Whether a ratio to the way in metres is about that of a unit.
    static boolean isNear(double ratio, Unit unit) {
        double off = ratio / unit.fromSi(1);
        return off > 0.75 && off < 1.33;
    }

    /// The unit of distance or speed that a ratio to the way in metres tells; empty where none does.
    static Optional<Unit> fitting(double ratio, boolean isDistance) {
        return Optional.of(nearest(ratio, isDistance ? DISTANCE_UNITS : SPEED_UNITS))
                .filter(unit -> isNear(ratio, unit));
    }

    private static double away(double ratio, Unit unit) {
        return Math.abs(StrictMath.log(ratio / unit.fromSi(1)));
    }

    private ColumnMeaning distance(ColumnMeaning meaning, int column) {
        TableDistances.Compared compared = distances.rise(column);
        if (compared.wayM() >= LONG_ENOUGH_M && compared.sum() > 0) {
            double ratio = compared.sum() / compared.wayM();
            Unit nearest = nearest(ratio, DISTANCE_UNITS);
            double off = ratio / nearest.fromSi(1);
            if (off > 0.7 && off < 1.4) {
                String because = "it rises by " + ShortNumber.of(ratio) + " for each metre by " + compared.by();
                note(meaning, nearest, because, false);
                return meaning.as(ChannelKind.DISTANCE, Optional.of(nearest), because);
            }
        }
        return unknown(meaning);
    }

    private ColumnMeaning pressure(ColumnMeaning meaning, double middle) {
        if (middle > 800 && middle < 1100) {
            return common(meaning, Unit.HECTOPASCAL);
        }
        if (middle > 80_000 && middle < 110_000) {
            return common(meaning, Unit.PASCAL);
        }
        return middle > 80 && middle < 110 ? common(meaning, Unit.KILOPASCAL) : unknown(meaning);
    }

    private ColumnMeaning acceleration(ColumnMeaning meaning) {
        double norm = distances.accelerationNorm();
        if (norm > 8.5 && norm < 11) {
            return meaning.as(meaning.kind(), Optional.of(Unit.METRE_PER_SECOND_SQUARED), "its length is gravity's");
        }
        if (norm > 0.87 && norm < 1.12) {
            return meaning.as(meaning.kind(), Optional.of(Unit.STANDARD_GRAVITY), "its length is 1 at rest");
        }
        return unknown(meaning);
    }

    private ColumnMeaning turnRate(ColumnMeaning meaning) {
        // No vehicle turns by more than 35 rad/s; numbers beyond that are degrees.
        return distances.largestTurnRate() > 35
                ? meaning.as(meaning.kind(), Optional.of(Unit.DEGREE_PER_SECOND), "too large for radians")
                : unknown(meaning);
    }
}
