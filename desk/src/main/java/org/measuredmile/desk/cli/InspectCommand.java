package org.measuredmile.desk.cli;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.measuredmile.archive.json.ColumnJson;
import org.measuredmile.archive.json.InspectJson;
import org.measuredmile.archive.json.Json;
import org.measuredmile.archive.json.SpokenJson;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.ReadingPrinter;
import org.measuredmile.recording.Inspection;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.recording.reader.Readers;
import org.measuredmile.recording.spoken.SpokenClip;
import org.measuredmile.trial.FoundRuns;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/// `mile inspect FILE…`: what is in a recording, without an archive.
@Command(
        name = "inspect",
        description =
                "Say what is in a recording: format, channels, rate, gaps, distance, runs found; in the captions of "
                        + "a clip, the numbers said and, beside a recording of the ride, the clip's clock.",
        mixinStandardHelpOptions = true)
final class InspectCommand implements Callable<Integer> {
    @Mixin
    private Shown shown = new Shown();

    @Mixin
    private ColumnOptions columns = new ColumnOptions();

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "files exactly as the instruments wrote them")
    private List<Path> files = List.of();

    private Map<Decoding, SpokenClip> clips = Map.of();

    @Override
    public Integer call() throws IOException {
        files.forEach(InspectCommand::requireFile);
        var settings = columns.settings();
        var decodings = new ArrayList<Decoding>();
        for (var file : files) {
            try (var bytes = new BufferedInputStream(Files.newInputStream(file))) {
                decodings.addAll(Readers.decodeAll(file.getFileName().toString(), bytes, name -> settings));
            }
        }
        clips = clips(decodings);
        if (shown.asJson()) {
            shown.json(Json.array(decodings, this::json));
        } else {
            decodings.forEach(this::print);
        }
        long refused =
                decodings.stream().filter(Decoding.Refused.class::isInstance).count();
        if (refused == 0) {
            return Mile.DONE;
        }
        return refused == decodings.size() ? Mile.BAD_INPUT : Mile.DATA_SAY_NO;
    }

    /// The captions among the files, each beside all the other files that were named.
    private static Map<Decoding, SpokenClip> clips(List<Decoding> decodings) {
        var recordings = new ArrayList<Recording>();
        decodings.forEach(one -> {
            if (one instanceof Decoding.Decoded(Recording recording)) {
                recordings.add(recording);
            }
        });
        // Two files in different folders may have one name.
        var clips = new IdentityHashMap<Decoding, SpokenClip>();
        decodings.forEach(one -> {
            if (one instanceof Decoding.Decoded(Recording recording) && SpokenClip.isOne(recording)) {
                clips.put(one, SpokenClip.of(recording, recordings));
            }
        });
        return clips;
    }

    private static void requireFile(Path file) {
        if (Files.isDirectory(file)) {
            throw new Trouble(
                    file + ": is a folder; name the files in it, or reduce a test day with: mile reduce " + file);
        }
        if (!Files.isRegularFile(file)) {
            throw new Trouble(file + ": there is no such file; check the path");
        }
    }

    private JsonNode json(Decoding decoding) {
        var object = (ObjectNode)
                switch (decoding) {
                    case Decoding.Decoded(var recording) -> InspectJson.write(inspect(recording));
                    case Decoding.Refused refused -> InspectJson.write(refused);
                };
        Optional.ofNullable(clips.get(decoding)).ifPresent(clip -> SpokenJson.write(clip, object));
        if (columns.wanted()) {
            object.set("columns", ColumnJson.write(decoding.columns()));
        }
        return object;
    }

    private static Inspection inspect(Recording recording) {
        var runs = FoundRuns.in(recording).stream()
                .flatMap(found -> found.run().stretch().stream()
                        .map(stretch -> new Inspection.ProposedRun(
                                found.trial(),
                                found.run().variant().text(),
                                stretch.fromS(),
                                stretch.toS(),
                                found.run().reason())))
                .toList();
        return Inspection.of(recording, runs);
    }

    private void print(Decoding decoding) {
        switch (decoding) {
            case Decoding.Decoded(var recording) -> print(inspect(recording));
            case Decoding.Refused refused -> {
                shown.line(refused.name() + ": could not be read");
                shown.findings("  ", refused.findings());
            }
        }
        Optional.ofNullable(clips.get(decoding)).ifPresent(new SpokenText(shown)::print);
        columns.lines(decoding).forEach(shown::line);
        shown.line("");
    }

    private void print(Inspection found) {
        String device = found.device().isEmpty() ? "" : ", " + found.device();
        shown.line(found.file() + ": " + found.format() + device);
        String start = found.startTime().map(Object::toString).orElse("no time of day")
                + (found.zoneStated() ? "" : " (zone not stated, read as UTC)");
        shown.line("  start      " + start);
        shown.line("  samples    " + found.samples());
        shown.line("  lasts      " + ReadingPrinter.byTheClock(found.clockSeconds(), 1) + riding(found));
        length("  distance   ", found.distanceMetres(), QuantityKind.DISTANCE);
        length("  along track ", found.trackDistanceMetres(), QuantityKind.DISTANCE);
        length("  ascent     ", found.ascentMetres(), QuantityKind.LENGTH);
        var channels = new Table("  channel", "unit", "samples", "a second");
        found.channels()
                .forEach(channel -> channels.row(
                        "  " + channel.name(),
                        channel.unit(),
                        Integer.toString(channel.samples()),
                        String.format(Locale.ROOT, "%.2f", channel.ratePerSecond())));
        channels.lines().forEach(shown::line);
        shown.line("  gaps       " + found.gaps().size());
        marks(found);
        found.runs()
                .forEach(run -> shown.line(String.format(
                        Locale.ROOT,
                        "  found      %s %s from %.1f s to %.1f s %s",
                        run.trial(),
                        run.variant(),
                        run.fromS(),
                        run.toS(),
                        run.why())));
        shown.findings("  ", found.findings());
    }

    /// How many laps, pauses and presses of a button there are.
    private void marks(Inspection found) {
        var counts = new java.util.EnumMap<Mark.Kind, Integer>(Mark.Kind.class);
        found.marks().forEach(mark -> counts.merge(mark.kind(), 1, Integer::sum));
        if (!counts.isEmpty()) {
            shown.line("  marks      "
                    + counts.entrySet().stream()
                            .map(one -> one.getKey().name().toLowerCase(Locale.ROOT) + " " + one.getValue())
                            .collect(java.util.stream.Collectors.joining(", ")));
        }
    }

    private static String riding(Inspection found) {
        return found.ridingSeconds().isPresent()
                ? ", of which riding "
                        + ReadingPrinter.byTheClock(found.ridingSeconds().getAsDouble(), 1)
                : "";
    }

    private void length(String head, OptionalDouble metres, QuantityKind kind) {
        metres.ifPresent(value -> shown.line(head
                + shown.printer()
                        .value(value, kind, kind == QuantityKind.LENGTH ? 0 : 3)
                        .text() + "   "
                + shown.printer()
                        .other()
                        .value(value, kind, kind == QuantityKind.LENGTH ? 0 : 3)
                        .text()));
    }
}
