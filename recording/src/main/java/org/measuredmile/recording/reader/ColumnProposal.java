package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.UnitText;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.ColumnMeaning;
import org.measuredmile.recording.ColumnMeaning.Role;
import org.measuredmile.recording.ColumnSetting;

/// Proposes what each column of a table means, from its head and its first rows.
final class ColumnProposal {
    /// Kinds whose numbers have one unit in every file.
    private static final Set<ChannelKind> WITHOUT_UNIT = Set.of(
            ChannelKind.LATITUDE,
            ChannelKind.LONGITUDE,
            ChannelKind.COURSE,
            ChannelKind.SATELLITES,
            ChannelKind.DILUTION_OF_PRECISION,
            ChannelKind.LEVER);

    private static final int FIRST_SHOWN = 4;

    private ColumnProposal() {}

    static List<ColumnMeaning> of(ClockChoice.Sample sample) {
        List<ColumnMeaning> meanings = new ArrayList<>();
        for (int column = 0; column < sample.names().size(); column++) {
            meanings.add(meaning(column, sample, meanings));
        }
        return withDegreesMinutes(meanings, sample);
    }

    /// Marks coordinates that hold degrees and minutes in one number; where one does, so do the others that can.
    private static List<ColumnMeaning> withDegreesMinutes(List<ColumnMeaning> meanings, ClockChoice.Sample sample) {
        boolean any = meanings.stream()
                .anyMatch(one -> isUnsetCoordinate(one, sample)
                        && (one.writtenUnit().toLowerCase(Locale.ROOT).contains("ddmm")
                                || CoordinateText.mustBeDegreesMinutes(sample.filled(one.index()), limit(one))));
        return meanings.stream()
                .map(one -> any
                                && isUnsetCoordinate(one, sample)
                                && CoordinateText.canBeDegreesMinutes(sample.filled(one.index()), limit(one))
                        ? one.inForm(ColumnSetting.DEGREES_MINUTES, "degrees and minutes in one number")
                        : one)
                .toList();
    }

    private static boolean isUnsetCoordinate(ColumnMeaning one, ClockChoice.Sample sample) {
        boolean isCoordinate = one.kind() == ChannelKind.LATITUDE || one.kind() == ChannelKind.LONGITUDE;
        return isCoordinate
                && sample.names()
                        .get(one.index())
                        .set()
                        .map(ColumnSetting::unit)
                        .orElse("")
                        .isEmpty();
    }

    private static double limit(ColumnMeaning one) {
        return one.kind() == ChannelKind.LATITUDE ? 90 : 180;
    }

    private static ColumnMeaning meaning(int column, ClockChoice.Sample sample, List<ColumnMeaning> before) {
        ColumnName name = sample.names().get(column);
        List<String> cells = sample.filled(column);
        var plain = new ColumnMeaning(
                column, name.text(), Role.VALUE, ChannelKind.OTHER, Optional.empty(), name.written(), "", first(cells));
        if (name.set().isPresent()) {
            return asSet(plain, name, name.set().get(), sample);
        }
        if (cells.isEmpty()) {
            return plain.as(Role.EMPTY, "");
        }
        ChannelKind kind = name.kind();
        if (isHemisphere(cells, before)) {
            return plain.as(Role.HEMISPHERE, "letters for the column before it");
        }
        if (name.mayBeClock() && kind == ChannelKind.OTHER) {
            return plain.as(Role.CLOCK, "by its name; rows are not put in time by it");
        }
        if (!mostlyNumbers(cells, kind, sample.decimalMark())) {
            return plain.as(Role.WORDS, "its values are no numbers");
        }
        return withUnit(plain, kind, name, cells, sample.decimalMark());
    }

    /// Whether the numbers of a kind have one unit in every file.
    static boolean isWithoutUnit(ChannelKind kind) {
        return WITHOUT_UNIT.contains(kind);
    }

    private static List<String> first(List<String> cells) {
        return cells.stream().limit(FIRST_SHOWN).map(Remarks::quoted).toList();
    }

    /// What a person set, whatever the name and the values say; the unit is the file's where none was set.
    private static ColumnMeaning asSet(
            ColumnMeaning plain, ColumnName name, ColumnSetting setting, ClockChoice.Sample sample) {
        if (setting.role() != Role.VALUE) {
            return plain.as(setting.role(), sample.setBy());
        }
        List<String> cells = sample.filled(plain.index());
        if (cells.isEmpty()) {
            return plain.as(Role.EMPTY, "");
        }
        if (setting.unit().isEmpty()) {
            ColumnMeaning found = withUnit(plain, setting.kind(), name, cells, sample.decimalMark());
            return found.as(setting.kind(), found.unit(), sample.setBy());
        }
        return plain.as(setting.kind(), setting.numbersIn(), sample.setBy());
    }

    private static ColumnMeaning withUnit(
            ColumnMeaning plain, ChannelKind kind, ColumnName name, List<String> cells, char mark) {
        if (kind == ChannelKind.OTHER || WITHOUT_UNIT.contains(kind)) {
            return plain.as(
                    kind,
                    Optional.empty(),
                    kind == ChannelKind.OTHER ? "its name tells nothing; kept as it is" : "by its name");
        }
        Unit si = kind.quantity().si();
        if (!name.written().isEmpty()) {
            Optional<Unit> unit =
                    HeadUnit.find(name.written(), si).or(() -> UnitText.find(name.written(), kind.quantity()));
            return unit.isPresent()
                    ? plain.as(kind, unit, "said in the head")
                    : plain.as(ChannelKind.OTHER, Optional.empty(), "its unit is not one of a " + kind.id());
        }
        String beside = NumberText.leading(cells.getFirst(), mark).rest();
        Optional<Unit> unit = HeadUnit.find(beside, si);
        return plain.as(kind, unit, unit.isPresent() ? "said in its cells" : "by its name");
    }

    private static boolean isHemisphere(List<String> cells, List<ColumnMeaning> before) {
        if (before.isEmpty()) {
            return false;
        }
        String letters = switch (before.getLast().kind()) {
            case LATITUDE -> "NS";
            case LONGITUDE -> "EW";
            default -> "";
        };
        return !letters.isEmpty() && cells.stream().allMatch(cell -> cell.length() == 1 && letters.contains(cell));
    }

    private static boolean mostlyNumbers(List<String> cells, ChannelKind kind, char mark) {
        long numbers = cells.stream().filter(cell -> isNumber(cell, kind, mark)).count();
        return numbers * 2 > cells.size();
    }

    private static boolean isNumber(String cell, ChannelKind kind, char mark) {
        if (NumberText.isPlain(cell, mark)) {
            return true;
        }
        if ((kind == ChannelKind.LATITUDE || kind == ChannelKind.LONGITUDE)
                && !Double.isNaN(CoordinateText.degrees(cell))) {
            return true;
        }
        NumberText.Leading leading = NumberText.leading(cell, mark);
        return !Double.isNaN(leading.value()) && isAllowedAfter(leading.rest(), kind);
    }

    /// Whether a cell may say this after its number: nothing, a unit, a hemisphere, or a second number in brackets.
    static boolean isAllowedAfter(String rest, ChannelKind kind) {
        if (rest.isEmpty() || HeadUnit.isKnown(rest)) {
            return true;
        }
        return switch (kind) {
            case SATELLITES -> rest.startsWith("(");
            default -> false;
        };
    }
}
