package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.trial.DayReduction;

/// What a day was measured with, and which instrument made which recording.
public record InstrumentsView(
        String title, String dayHref, String href, List<Row> rows, List<Made> files, List<RunView.Choice> choices) {
    /// An instrument in words.
    public record Row(String id, String kind, String told) {}

    /// A recording and the instrument that it was given to.
    public record Made(int number, String file, String instrument) {}

    /// The kinds of instrument, to choose from.
    public static List<RunView.Choice> kinds() {
        return Arrays.stream(Instrument.Kind.values())
                .map(kind -> new RunView.Choice(kind.id(), kind.id().replace('-', ' ')))
                .toList();
    }

    public static InstrumentsView of(Printing printing, String dayId, DayReduction.Result.Reduced reduced) {
        var files = new ArrayList<Made>();
        for (String file : files(reduced)) {
            String made = reduced.day()
                    .recording(file)
                    .map(RecordingEntry::instrument)
                    .orElse("");
            files.add(new Made(files.size() + 1, file, made));
        }
        return new InstrumentsView(
                "Instruments, " + Printing.day(reduced.day().date()),
                Paths.day(dayId),
                Paths.instruments(dayId),
                reduced.day().instruments().stream()
                        .map(one -> row(printing, one))
                        .toList(),
                files,
                reduced.day().instruments().stream()
                        .map(one -> new RunView.Choice(one.id(), one.id()))
                        .toList());
    }

    /// The day's recordings by name, those within a packed file each by its own.
    public static List<String> files(DayReduction.Result.Reduced reduced) {
        return List.copyOf(reduced.recordings().keySet());
    }

    private static Row row(Printing printing, Instrument one) {
        var told = new ArrayList<String>();
        one.resolution().ifPresent(si -> {
            var unit = one.kind().quantity().shown(printing.system());
            double shown = unit.differenceFromSi(si);
            told.add("reads to " + QuantityPrinter.digits(org.measuredmile.quantity.Rounding.toSignificant(shown, 2))
                    + "\u00a0" + unit.symbol());
        });
        one.calibration()
                .ifPresent(known -> told.add(String.format(
                        Locale.ROOT,
                        "true = %.4f ± %.4f × reading%s",
                        known.factor(),
                        2 * known.standardUncertainty(),
                        known.date().map(date -> ", " + Printing.shortDay(date)).orElse(""))));
        one.delayS().ifPresent(seconds -> told.add(String.format(Locale.ROOT, "%.2f\u00a0s late", seconds)));
        one.frameRate().ifPresent(rate -> told.add(rate.text() + " frames a second"));
        return new Row(one.id(), one.kind().id().replace('-', ' '), String.join("; ", told));
    }
}
