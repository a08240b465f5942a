package org.measuredmile.desk.cli;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.recording.ColumnMeaning;
import org.measuredmile.recording.ColumnSetting;
import org.measuredmile.recording.ColumnSettings;
import org.measuredmile.recording.reader.Decoding;
import picocli.CommandLine.Option;

/// What the columns of tables mean: asked for, and set for one look.
final class ColumnOptions {
    @Option(
            names = "--columns",
            description = "show what each column of a table was taken for, why, and its first values")
    private boolean wanted;

    @Option(
            names = "--column",
            paramLabel = "NAME=MEANING[:UNIT]",
            description = "take a column to mean this, as \"spd=wheel-speed:km/h\", \"t=time:ms\" or \"note=none\"; "
                    + "without a head the columns are called \"column 1\", \"column 2\" and so on; for good, set it on "
                    + "the test day's page")
    private List<String> set = List.of();

    boolean wanted() {
        return wanted;
    }

    /// What was set on the command line, for every file that is named there.
    ColumnSettings settings() {
        var settings = new ArrayList<ColumnSetting>();
        for (String one : set) {
            settings.add(setting(one));
        }
        return ColumnSettings.of("this look", settings);
    }

    private static ColumnSetting setting(String written) {
        int equals = written.lastIndexOf('=');
        if (equals < 1) {
            throw new Trouble("--column " + written + ": write it as NAME=MEANING or NAME=MEANING:UNIT");
        }
        String name = written.substring(0, equals);
        String[] said = written.substring(equals + 1).split(":", 2);
        String meaning = said[0].strip();
        if (!ColumnSetting.meanings().contains(meaning)) {
            throw new Trouble("--column " + written + ": \"" + meaning + "\" is no meaning; write one of "
                    + String.join(", ", ColumnSetting.meanings()));
        }
        String unit = said.length > 1 ? said[1].strip() : "";
        return ColumnSetting.of(name, meaning, unit)
                .orElseThrow(() -> new Trouble(
                        "--column " + written + ": \"" + unit + "\" is no unit of " + meaning + "; " + units(meaning)));
    }

    private static String units(String meaning) {
        List<String> units = ColumnSetting.units(meaning);
        return units.isEmpty() ? "leave it out" : "write one of " + String.join(", ", units) + ", or leave it out";
    }

    /// The table of a file's columns; empty where it was not asked for or the format has none.
    List<String> lines(Decoding decoding) {
        if (!wanted || decoding.columns().isEmpty()) {
            return List.of();
        }
        var table = new Table("  column", "means", "unit", "because", "first values");
        for (ColumnMeaning column : decoding.columns()) {
            table.row(
                    "  " + column.name(),
                    column.meaning(),
                    column.unitText(),
                    column.because(),
                    String.join(" · ", column.first()));
        }
        return table.lines();
    }
}
