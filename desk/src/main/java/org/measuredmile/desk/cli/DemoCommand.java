package org.measuredmile.desk.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import org.measuredmile.archive.Act;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.DayEntry;
import org.measuredmile.archive.DayFolders;
import org.measuredmile.demo.DemoFleet;
import org.measuredmile.recording.day.DayFolder;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/// `mile demo`: an invented fleet's test days, written as files, taken in like a crew's own, and served.
@Command(
        name = "demo",
        description = "Fill an archive with an invented fleet and serve it.",
        mixinStandardHelpOptions = true)
final class DemoCommand implements Callable<Integer> {
    /// Changes when the invented files change, so that an older demo is made anew.
    private static final String VERSION = "1 " + DemoFleet.SEED;

    private static final String COMPLETE = "demo-complete.txt";
    private static final String FILES = "files";
    private static final String LEDGER = "earlier-years.csv";
    private static final Act ACT = new Act("demo", "the invented fleet");

    @Mixin
    private Shown shown = new Shown();

    @Option(names = "--archive", paramLabel = "PATH", description = "where to put it (default: demo-archive)")
    private Path folder = Chosen.demoFolder();

    @Option(names = "--port", paramLabel = "NUMBER", description = "the port (default: 8731, or the next free one)")
    private int port = Serving.USUAL_PORT;

    @Option(names = "--only-fill", description = "fill the archive and end")
    private boolean onlyFill;

    @Option(names = "--days", paramLabel = "NUMBER", hidden = true, description = "only the first days")
    private int most = Integer.MAX_VALUE;

    @Override
    public Integer call() throws IOException, InterruptedException {
        if (!isComplete()) {
            clear();
            fill();
        }
        try (var archive = Archive.open(folder, java.time.Clock.systemUTC());
                var progress = new TerminalProgress("reduce")) {
            archive.renew(progress);
            shown.err().println("Everything in this archive is invented: town, makers, bikes, crew.");
            if (onlyFill) {
                shown.line(archive.days().size() + " test days in " + folder);
                return Mile.DONE;
            }
            Serving.untilStopped(archive, port, true, shown);
        }
        return Mile.DONE;
    }

    private boolean isComplete() throws IOException {
        var mark = folder.resolve(COMPLETE);
        return Archive.isArchive(folder)
                && Files.isRegularFile(mark)
                && Files.readString(mark).strip().equals(VERSION);
    }

    /// Takes away what an earlier or unfinished demo left; a folder that no demo made is not touched.
    private void clear() throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        try (var there = Files.list(folder)) {
            boolean isOurs =
                    Files.exists(folder.resolve(FILES)) || there.findAny().isEmpty();
            if (!isOurs) {
                throw new Trouble(folder + ": holds something else than a demo; name another folder with --archive");
            }
        }
        try (var all = Files.walk(folder)) {
            for (var path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }

    private void fill() throws IOException {
        shown.err().println("Making the invented fleet's test days in " + folder + ".");
        var files = Files.createDirectories(folder.resolve(FILES));
        List<DayFolder> days =
                DemoFleet.days(DemoFleet.SEED).stream().limit(most).toList();
        try (var archive = Archive.open(folder, java.time.Clock.systemUTC());
                var progress = new TerminalProgress("demo")) {
            for (int i = 0; i < days.size(); i++) {
                progress.step(days.get(i).name(), i, days.size());
                var place = files.resolve("days").resolve(days.get(i).name());
                DayFolders.write(days.get(i), place);
                var report = archive.importDay(DayFolders.read(place), ACT);
                if (report.entry().state() == DayEntry.State.FAILED) {
                    throw new Trouble(report.day() + ": " + report.entry().message());
                }
            }
            var ledger = Files.write(files.resolve(LEDGER), DemoFleet.ledger());
            archive.importLedger(LEDGER, Files.readAllBytes(ledger), ACT);
        }
        Files.writeString(folder.resolve(COMPLETE), VERSION + "\n", StandardCharsets.UTF_8);
    }
}
