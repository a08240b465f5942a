package org.measuredmile.desk.web.edit;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.FrameReading;
import org.measuredmile.trial.ReadingResolver;
import org.measuredmile.trial.ReadingSpec;
import org.measuredmile.trial.ResolvedReadings;

/// One reading as typed: whether it can be kept, what it comes to, and how it is written down.
///
/// Shape: a bare number is in the crew's unit. A time may be told by a camera's frames, `frames 1203 to 1266`, with the
/// rate behind them where no camera of the day states it, `at 30000/1001`, and with the camera where there are several,
/// `by camera-2`.
public final class TypedReading {
    private static final Pattern BY_CAMERA = Pattern.compile("(.+?) +by +(\\S+)");

    private final Declaration trial;
    private final TestDay day;
    private final UnitSystem system;

    public TypedReading(Declaration trial, TestDay day, UnitSystem system) {
        this.trial = trial;
        this.day = day;
        this.system = system;
    }

    /// Who wrote a reading down, when, for which run, and what else there is to say.
    record Author(String run, String who, Optional<Instant> at, String note) {}

    /// What is wrong with a reading's text; empty when it can be kept.
    public String fault(ReadingSpec spec, String text) {
        if (spec.kind() == QuantityKind.WORD) {
            return spec.choices().isEmpty() || spec.choices().contains(text)
                    ? ""
                    : "One of " + String.join(", ", spec.choices()) + ".";
        }
        if (isFrames(spec, text)) {
            return framesFault(spec, text);
        }
        return switch (QuantityText.parse(text, spec.kind(), spec.kind().shown(system))) {
            case Parsed.Fault(String message, String remedy) -> capital(message) + "; " + remedy + ".";
            case Parsed.Value value when !spec.plausible().contains(value.si()) -> implausible(spec, text);
            case Parsed.Value _ -> "";
        };
    }

    private String framesFault(ReadingSpec spec, String text) {
        Reading frames = frames(spec, text);
        Optional<Finding> finding = ReadingResolver.check(trial, day, frames);
        if (finding.isEmpty()) {
            return "";
        }
        List<Instrument> cameras = cameras(day);
        boolean isOpen = finding.get().code().equals("frames-without-rate")
                && frames.instrument().isEmpty();
        return isOpen && cameras.size() > 1
                ? "There are several cameras; say which, as in " + text + " by "
                        + cameras.getFirst().id() + "."
                : capital(finding.get().message()) + "; " + finding.get().remedy() + ".";
    }

    /// What may stand behind frames so that they tell a time on a day: nothing where its one camera states the
    /// rate.
    public static String behindFrames(TestDay day) {
        List<Instrument> cameras = cameras(day);
        return cameras.isEmpty()
                ? " at 30000/1001"
                : cameras.size() == 1 ? "" : " by " + cameras.getFirst().id();
    }

    /// The day's cameras whose rate is known.
    private static List<Instrument> cameras(TestDay day) {
        return day.instruments().stream()
                .filter(one -> one.kind() == Instrument.Kind.CAMERA)
                .filter(one -> one.frameRate().isPresent())
                .toList();
    }

    /// The value in SI, where it can be read.
    public Optional<Double> si(ReadingSpec spec, String text) {
        if (text.isEmpty() || spec.kind() == QuantityKind.WORD) {
            return Optional.empty();
        }
        if (isFrames(spec, text)) {
            return resolved(spec, text).map(ResolvedReadings.Value::si);
        }
        return QuantityText.parse(text, spec.kind(), spec.kind().shown(system)) instanceof Parsed.Value value
                ? Optional.of(value.si())
                : Optional.empty();
    }

    /// The seconds that frames come to, with what half a frame leaves open; empty for anything else.
    public String secondsOfFrames(ReadingSpec spec, String text) {
        if (!isFrames(spec, text)) {
            return "";
        }
        Optional<ResolvedReadings.Value> value = resolved(spec, text);
        Optional<FrameReading> frames = FrameReading.parse(frames(spec, text).written());
        if (value.isEmpty() || frames.isEmpty()) {
            return "";
        }
        double halfFrameS = value.get().resolution() / Math.sqrt(frames.get().ends()) / 2;
        String seconds =
                QuantityPrinter.in(QuantityKind.TIME.si(), value.get().si(), 3).text();
        String half = QuantityPrinter.in(QuantityKind.TIME.si(), halfFrameS, 3).text();
        return frames.get().ends() == 1
                ? seconds + " ± " + half + ", half a frame"
                : seconds + ", each end ± " + half + ", half a frame";
    }

    Reading reading(ReadingSpec spec, String text, Author author) {
        if (isFrames(spec, text)) {
            Reading frames = frames(spec, text);
            return with(author, frames, frames.instrument());
        }
        boolean isBare = text.matches("[-+−]?[\\d.,]+") && spec.kind() != QuantityKind.WORD;
        String unit = isBare ? spec.kind().shown(system).symbol() : "";
        String instrument =
                spec.instrument().flatMap(day::instrument).map(Instrument::id).orElse("");
        return with(author, plain(spec, text, unit), instrument);
    }

    private static Reading with(Author author, Reading written, String instrument) {
        return new Reading(
                author.run(),
                written.name(),
                written.value(),
                written.unit(),
                instrument,
                author.at(),
                author.who(),
                author.note(),
                Place.NOWHERE);
    }

    private static Reading plain(ReadingSpec spec, String text, String unit) {
        return new Reading("", spec.name(), text, unit, "", Optional.empty(), "", "", Place.NOWHERE);
    }

    private static boolean isFrames(ReadingSpec spec, String text) {
        return spec.kind() == QuantityKind.TIME && FrameReading.isMeant(text);
    }

    /// Frames with the camera that is named behind them; without a name the day's only one counts.
    private Reading frames(ReadingSpec spec, String text) {
        Matcher by = BY_CAMERA.matcher(text);
        if (by.matches() && day.instrument(by.group(2)).isPresent()) {
            return with(new Author("", "", Optional.empty(), ""), plain(spec, by.group(1), ""), by.group(2));
        }
        return plain(spec, text, "");
    }

    private Optional<ResolvedReadings.Value> resolved(ReadingSpec spec, String text) {
        return ReadingResolver.value(trial, day, frames(spec, text));
    }

    private String implausible(ReadingSpec spec, String text) {
        return "“" + text + "” is no " + spec.title() + ". Between "
                + rough(spec, spec.plausible().low()) + " and "
                + rough(spec, spec.plausible().high()) + "; is a point or a unit missing?";
    }

    private String rough(ReadingSpec spec, double si) {
        if (Double.isInfinite(si)) {
            return si < 0 ? "anything" : "any size";
        }
        double shown = Math.abs(spec.kind().shown(system).fromSi(si));
        return QuantityPrinter.in(spec.kind().shown(system), si, shown >= 100 || shown == 0 ? 0 : 1)
                .text();
    }

    private static String capital(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
