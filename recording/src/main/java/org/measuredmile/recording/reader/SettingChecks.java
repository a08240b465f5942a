package org.measuredmile.recording.reader;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.UnitText;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.ColumnMeaning;
import org.measuredmile.recording.ColumnSetting;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.reader.TableDistances.Compared;

/// Compares what a person set columns to mean with what the columns hold; what was set is used all
/// the same, and said to be contradicted.
///
/// Source: the limits are what no bicycle, rider or instrument on one reaches; common practice, no
/// source.
final class SettingChecks {
    private static final double LONG_ENOUGH_M = 100;
    private static final double MUST_FIT = 0.5;
    private static final double MOST_BACK = 0.1;

    private final ClockChoice.Sample sample;
    private final Remarks remarks;

    SettingChecks(ClockChoice.Sample sample, Remarks remarks) {
        this.sample = sample;
        this.remarks = remarks;
    }

    /// Looks at the first rows of every column that was set.
    void check(List<ColumnMeaning> meanings, Optional<ClockChoice> clocks) {
        for (ColumnMeaning meaning : meanings) {
            Optional<ColumnSetting> setting =
                    sample.names().get(meaning.index()).set();
            if (setting.isPresent()) {
                check(meaning, setting.get(), clocks.isPresent());
            }
        }
    }

    private void check(ColumnMeaning meaning, ColumnSetting setting, boolean hasClock) {
        List<String> cells = sample.filled(meaning.index());
        if (setting.role() == ColumnMeaning.Role.LEFT_OUT) {
            return;
        }
        if (cells.isEmpty()) {
            remarks.add(Finding.note(
                    "column-empty",
                    place(meaning),
                    "\"" + Remarks.quoted(meaning.name()) + "\" was set to mean " + setting.meaning()
                            + ", but nothing stands in its first rows"));
            return;
        }
        Optional<String> against = setting.role() == ColumnMeaning.Role.CLOCK
                ? againstTime(meaning, cells, hasClock)
                : againstValues(meaning, setting, cells);
        against.ifPresent(why -> contradict(meaning, setting, why));
    }

    private void contradict(ColumnMeaning meaning, ColumnSetting setting, String why) {
        String in = setting.unit().isEmpty() ? "" : " in " + setting.unit();
        remarks.add(Finding.warning(
                "column-contradicted",
                place(meaning),
                "\"" + Remarks.quoted(meaning.name()) + "\" was set to mean " + setting.meaning() + in + ", but " + why
                        + "; it was read as set",
                "set it anew, or look whether another instrument wrote the file"));
    }

    private Place place(ColumnMeaning meaning) {
        return new Place(remarks.source(), meaning.name());
    }

    private Optional<String> againstTime(ColumnMeaning meaning, List<String> cells, boolean hasClock) {
        if (!ClockChoice.canBeRead(meaning.index(), sample)) {
            return Optional.of("its values, the first \"" + Remarks.quoted(cells.getFirst()) + "\", are no times");
        }
        return hasClock ? Optional.empty() : Optional.of("its times do not go on from row to row");
    }

    private Optional<String> againstValues(ColumnMeaning meaning, ColumnSetting setting, List<String> cells) {
        double[] values = cells.stream()
                .mapToDouble(cell -> number(cell, meaning))
                .filter(value -> !Double.isNaN(value))
                .toArray();
        if (values.length < MUST_FIT * cells.size()) {
            int others = cells.size() - values.length;
            return Optional.of(others + " of its first " + cells.size() + " values, the first \""
                    + Remarks.quoted(firstOther(cells, meaning)) + "\", cannot be read as such");
        }
        return againstHead(meaning, setting)
                .or(() -> againstSize(meaning, values))
                .or(() -> againstOrder(meaning, values));
    }

    private String firstOther(List<String> cells, ColumnMeaning meaning) {
        return cells.stream()
                .filter(cell -> Double.isNaN(number(cell, meaning)))
                .findFirst()
                .orElse("");
    }

    private double number(String cell, ColumnMeaning meaning) {
        boolean isCoordinate = meaning.kind() == ChannelKind.LATITUDE || meaning.kind() == ChannelKind.LONGITUDE;
        if (!isCoordinate) {
            NumberText.Leading leading = NumberText.leading(cell, sample.decimalMark());
            return ColumnProposal.isAllowedAfter(leading.rest(), meaning.kind()) ? leading.value() : Double.NaN;
        }
        boolean inMinutes = meaning.writtenUnit().equals(ColumnSetting.DEGREES_MINUTES);
        double written = CoordinateText.degrees(cell);
        double degrees = inMinutes ? CoordinateText.ofDegreesMinutes(written) : written;
        return Math.abs(degrees) <= (meaning.kind() == ChannelKind.LATITUDE ? 90 : 180) ? degrees : Double.NaN;
    }

    /// The head may name a unit that is another one, or one of something else.
    private static Optional<String> againstHead(ColumnMeaning meaning, ColumnSetting setting) {
        String written = ColumnName.of(meaning.name()).written();
        if (!HeadUnit.isKnown(written)
                || setting.kind() == ChannelKind.OTHER
                || setting.unit().isEmpty()) {
            return Optional.empty();
        }
        QuantityKind quantity = setting.kind().quantity();
        Optional<Unit> said = HeadUnit.find(written, quantity.si()).or(() -> UnitText.find(written, quantity));
        if (said.isEmpty()) {
            return Optional.of("its head says \"" + Remarks.quoted(written) + "\", which is no unit of it");
        }
        boolean same = setting.numbersIn().isEmpty() || setting.numbersIn().equals(said);
        return same
                ? Optional.empty()
                : Optional.of("its head says " + said.get().symbol());
    }

    private static Optional<String> againstSize(ColumnMeaning meaning, double[] values) {
        double most = largest(meaning.kind());
        boolean unitIsOpen = meaning.unit().isEmpty() && !ColumnProposal.isWithoutUnit(meaning.kind());
        if (unitIsOpen || most == Double.POSITIVE_INFINITY) {
            return Optional.empty();
        }
        double middle = median(values);
        double middleSi = meaning.unit().map(unit -> unit.toSi(middle)).orElse(middle);
        return Math.abs(middleSi) <= most && middleSi >= smallest(meaning.kind())
                ? Optional.empty()
                : Optional.of("the middle one of its first values is " + ShortNumber.of(middle)
                        + meaning.unit().map(unit -> " " + unit.symbol()).orElse(""));
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    /// The largest size that a middle value can have, in the SI unit.
    private static double largest(ChannelKind kind) {
        return switch (kind) {
            case SPEED, WHEEL_SPEED -> 40;
            case WIND_SPEED -> 60;
            case COURSE -> 360;
            case ALTITUDE -> 9_000;
            case ACCELERATION_X, ACCELERATION_Y, ACCELERATION_Z -> 100;
            case TURN_RATE_X, TURN_RATE_Y, TURN_RATE_Z -> 35;
            case CADENCE, HEART_RATE -> 5;
            case POWER -> 5_000;
            case FORCE -> 20_000;
            case AIR_TEMPERATURE -> 350;
            case PRESSURE -> 120_000;
            case HUMIDITY, STATE_OF_CHARGE, LEVER -> 1.05;
            case VOLTAGE -> 1_000;
            case CURRENT -> 500;
            case SATELLITES, DILUTION_OF_PRECISION -> 100;
            case LATITUDE, LONGITUDE, DISTANCE, OTHER -> Double.POSITIVE_INFINITY;
        };
    }

    private static double smallest(ChannelKind kind) {
        return switch (kind) {
            case AIR_TEMPERATURE -> 200;
            case PRESSURE -> 30_000;
            case COURSE, HUMIDITY, STATE_OF_CHARGE, LEVER, SATELLITES, DILUTION_OF_PRECISION -> 0;
            default -> Double.NEGATIVE_INFINITY;
        };
    }

    /// A distance since the start does not go back.
    private static Optional<String> againstOrder(ColumnMeaning meaning, double[] values) {
        int back = 0;
        for (int i = 1; i < values.length; i++) {
            back += values[i] < values[i - 1] ? 1 : 0;
        }
        boolean goesBack = meaning.kind() == ChannelKind.DISTANCE && back > MOST_BACK * values.length;
        return goesBack ? Optional.of("it goes back in " + back + " of its first rows") : Optional.empty();
    }

    /// Compares a set unit of speed or distance with the way between positions.
    void checkWay(ColumnMeaning meaning, int column, TableDistances distances) {
        Optional<ColumnSetting> setting = sample.names().get(meaning.index()).set();
        boolean isDistance = meaning.kind() == ChannelKind.DISTANCE;
        boolean isSpeed = meaning.kind() == ChannelKind.SPEED || meaning.kind() == ChannelKind.WHEEL_SPEED;
        if (setting.flatMap(ColumnSetting::numbersIn).isEmpty() || !(isDistance || isSpeed)) {
            return;
        }
        Compared compared = isDistance ? distances.rise(column) : distances.speedAgainstWay(column);
        if (compared.wayM() < LONG_ENOUGH_M || compared.sum() <= 0) {
            return;
        }
        double ratio = compared.sum() / compared.wayM();
        Unit set = setting.get().numbersIn().orElseThrow();
        if (!ColumnUnits.isNear(ratio, set)) {
            String fits = ColumnUnits.fitting(ratio, isDistance)
                    .map(unit -> ", as if it were in " + unit.symbol())
                    .orElse("");
            contradict(
                    meaning,
                    setting.get(),
                    (isDistance ? "it rises by " : "its sum over time is ")
                            + ShortNumber.of(ratio)
                            + (isDistance ? " for each metre by " : " times the way in metres by ")
                            + compared.by()
                            + fits);
        }
    }
}
