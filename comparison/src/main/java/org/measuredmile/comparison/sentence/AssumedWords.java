package org.measuredmile.comparison.sentence;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/// Short names of what figures take for granted, so that a sentence can say so in a few words.
///
/// Shape: the first entry whose words an assumption holds names it; one that none knows is named by its own beginning.
final class AssumedWords {
    private static final Map<String, String> NAMES = new LinkedHashMap<>();

    static {
        NAMES.put("road load", "road load");
        NAMES.put("no calibration", "instrument scale");
        NAMES.put("light effort", "rider effort");
        NAMES.put("gusts", "gusts");
        NAMES.put("wind", "wind");
        NAMES.put("level road", "level road");
        NAMES.put("even slope", "even slope");
        NAMES.put("charger's efficiency", "charger efficiency");
        NAMES.put("turning of the wheels", "wheel inertia");
        NAMES.put("a watch", "timing by hand");
        NAMES.put("build-up of the brakes", "brake build-up");
        NAMES.put("receiver averages", "receiver filter");
        NAMES.put("thrust builds up", "thrust build-up");
        NAMES.put("lesser of one force", "thrust curve");
        NAMES.put("power limit sets in", "thrust curve");
        NAMES.put("drive force falling", "thrust curve");
        NAMES.put("speed at both marks", "speeds at the marks");
        NAMES.put("square of the entry speed", "scaling with entry speed");
        NAMES.put("accelerometer", "accelerometer mounting");
        NAMES.put("mass of the rider", "rider mass");
        NAMES.put("mass of the bike", "bike mass");
        NAMES.put("air temperature", "air temperature");
        NAMES.put("humidity", "humidity");
        NAMES.put("pressure", "air pressure");
        NAMES.put("speeds vary", "spread of speeds");
        NAMES.put("distance by hand", "counter scale");
    }

    private AssumedWords() {}

    static List<String> names(List<String> assumed) {
        return assumed.stream().map(AssumedWords::name).distinct().toList();
    }

    private static String name(String assumption) {
        return NAMES.entrySet().stream()
                .filter(entry -> assumption.contains(entry.getKey()))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElseGet(() -> assumption.split("[:,(;±]|\\d", 2)[0].strip());
    }
}
