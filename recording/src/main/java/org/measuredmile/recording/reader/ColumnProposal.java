package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.UnitText;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.ColumnMeaning;
import org.measuredmile.recording.ColumnMeaning.Role;

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

    private ColumnProposal() {}

    static List<ColumnMeaning> of(ClockChoice.Sample sample) {
        List<ColumnMeaning> meanings = new ArrayList<>();
        for (int column = 0; column < sample.names().size(); column++) {
            meanings.add(meaning(column, sample, meanings));
        }
        return meanings;
    }

    private static ColumnMeaning meaning(int column, ClockChoice.Sample sample, List<ColumnMeaning> before) {
        ColumnName name = sample.names().get(column);
        List<String> cells = sample.filled(column);
        var plain = new ColumnMeaning(
                column, name.text(), Role.VALUE, ChannelKind.OTHER, Optional.empty(), name.written(), "");
        if (cells.isEmpty()) {
            return plain.as(Role.EMPTY, "");
        }
        ChannelKind kind = name.kind();
        if (isHemisphere(cells, before)) {
            return plain.as(Role.HEMISPHERE, "");
        }
        if (name.mayBeClock() && kind == ChannelKind.OTHER) {
            return plain.as(Role.CLOCK, "");
        }
        if (!mostlyNumbers(cells, kind, sample.decimalMark())) {
            return plain.as(Role.WORDS, "");
        }
        return withUnit(plain, kind, name, cells, sample.decimalMark());
    }

    private static ColumnMeaning withUnit(
            ColumnMeaning plain, ChannelKind kind, ColumnName name, List<String> cells, char mark) {
        if (kind == ChannelKind.OTHER || WITHOUT_UNIT.contains(kind)) {
            return plain.as(kind, Optional.empty(), kind == ChannelKind.OTHER ? "kept as it is" : "");
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
        return plain.as(kind, unit, unit.isPresent() ? "said in its cells" : "");
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
        NumberText.Leading leading = NumberText.leading(cell, mark);
        return !Double.isNaN(leading.value()) && isAllowedAfter(leading.rest(), kind);
    }

    /// Whether a cell may say this after its number: nothing, a unit, a hemisphere, or a second number in brackets.
    static boolean isAllowedAfter(String rest, ChannelKind kind) {
        if (rest.isEmpty() || HeadUnit.isKnown(rest)) {
            return true;
        }
        return switch (kind) {
            case LATITUDE, LONGITUDE -> rest.length() == 1 && "NSEW".contains(rest);
            case SATELLITES -> rest.startsWith("(");
            default -> false;
        };
    }
}
