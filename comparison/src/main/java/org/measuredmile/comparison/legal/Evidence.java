package org.measuredmile.comparison.legal;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.TestedBike.Result;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.FigureKey;

/// What is known of a bike that a class may ask about: figures that stand, what is fitted, what is claimed or marked.
record Evidence(TestedBike tested) {
    private static final String SPEED = "assistspeed.speed";
    private static final String CUT_OFF = "assistspeed.cut-off";
    private static final String RUN_ON = "engagement.overrun-distance";

    /// Motor power as somebody says it.
    ///
    /// Shape: `isMarked` where the bike's own mark says it, else the maker's page; `isRated` where the line
    /// says that rated or continuous power is meant, `isPeak` where it says or may mean a peak.
    record PowerSaid(double si, boolean isMarked, boolean isRated, boolean isPeak, String words) {}

    List<Result> cutOffs() {
        return latest(CUT_OFF, Variant.NONE);
    }

    /// Speeds by the motor alone, as ridden.
    List<Result> motorAlone() {
        return latest(SPEED, Variant.of("drive", "throttle"));
    }

    /// The same result at reference conditions.
    Optional<Result> atReference(Result asRidden) {
        var key = asRidden.figure().key();
        return tested.of(key.figure()).stream()
                .filter(one -> one.figure()
                        .key()
                        .equals(new FigureKey(key.figure(), key.variant().with("at", "reference"))))
                .filter(one -> one.day().equals(asRidden.day()))
                .findFirst();
    }

    List<Result> runOns() {
        return latest(RUN_ON, Variant.NONE);
    }

    /// Steady speeds with the cranks turning: no cut-off among them.
    boolean hasPedalledSpeed() {
        return !latest(SPEED, Variant.of("drive", "pedal")).isEmpty();
    }

    Optional<Result> latest(String figure) {
        return tested.of(figure).stream().findFirst();
    }

    Optional<Result> latestOf(FigureKey key) {
        return tested.latest(key);
    }

    /// Of each variant as ridden that covers the one asked for, the latest result.
    private List<Result> latest(String figure, Variant asked) {
        Map<Variant, Result> byVariant = new LinkedHashMap<>();
        for (var result : tested.of(figure)) {
            var variant = result.figure().key().variant();
            if (variant.get("at").isEmpty() && variant.covers(asked)) {
                byVariant.putIfAbsent(variant, result);
            }
        }
        return List.copyOf(byVariant.values());
    }

    private String drive() {
        return tested.bike().drive();
    }

    boolean isDriveKnown() {
        return !drive().isEmpty() || !motorAlone().isEmpty();
    }

    boolean hasThrottle() {
        return drive().equals("both")
                || drive().equals("throttle")
                || !motorAlone().isEmpty();
    }

    boolean hasPedals() {
        return drive().equals("both") || drive().equals("pedal") || !cutOffs().isEmpty();
    }

    /// The power that is marked on the bike, else the one that is claimed.
    Optional<PowerSaid> power() {
        for (var line : tested.bike().spec()) {
            if (line.item().equals("motor-power")) {
                var marked = power(line, line.seen(), true);
                var said = marked.isPresent() ? marked : power(line, line.claimed() + " " + line.unit(), false);
                if (said.isPresent()) {
                    return said;
                }
            }
        }
        return Optional.empty();
    }

    private static Optional<PowerSaid> power(SpecLine line, String text, boolean isMarked) {
        String number = text.strip().replaceFirst("^up to ", "");
        boolean isUpTo = !number.equals(text.strip());
        if (!(QuantityText.parse(number, QuantityKind.POWER) instanceof Parsed.Value read)) {
            return Optional.empty();
        }
        String conditions = line.conditions().toLowerCase(Locale.ROOT);
        boolean isPeak = isUpTo || conditions.contains("rating=peak");
        boolean isRated = !isPeak
                && (isMarked || conditions.contains("rating=rated") || conditions.contains("rating=continuous"));
        return Optional.of(new PowerSaid(read.si(), isMarked, isRated, isPeak, text.strip()));
    }

    /// The top assisted speed that is marked on the bike, in m/s.
    OptionalDouble markedSpeedMps() {
        return tested.bike().spec().stream()
                .filter(line -> line.item().equals("top-assisted-speed"))
                .map(line -> QuantityText.parse(line.seen(), QuantityKind.SPEED))
                .filter(Parsed.Value.class::isInstance)
                .mapToDouble(read -> ((Parsed.Value) read).si())
                .findFirst();
    }

    /// What the bike says of its class, where it says it.
    List<SpecLine> labels() {
        return tested.bike().spec().stream()
                .filter(line -> line.item().equals("class-label"))
                .toList();
    }
}
