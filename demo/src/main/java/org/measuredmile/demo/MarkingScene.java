package org.measuredmile.demo;

import java.util.Map;
import java.util.Set;

/// What an invented bike itself says, read off it in the morning: its label, the plate of its battery, its tyres.
final class MarkingScene {
    /// Bikes whose marks nobody read on the day.
    private static final Set<String> NOT_READ = Set.of(
            "zornby-drayman",
            "mirefoot-osier",
            "vessenby-halfpenny",
            "quorvane-thimble",
            "pellowick-bramble",
            "haverdusk-almanac");

    /// Labels that say something else than the maker's page.
    private static final Map<String, String> LABELS = Map.of("skelloway-causeway", "Class 1");

    private static final Map<String, String> MOTORS = Map.of("hobbarn-withy", "750 W");

    private MarkingScene() {}

    static void play(DayScript day, FleetSpec.Facts says) {
        if (NOT_READ.contains(says.id())) {
            return;
        }
        String label = LABELS.getOrDefault(says.id(), says.classLabel());
        String motor = MOTORS.getOrDefault(says.id(), says.powerW() + " W");
        read(day, "class-label", label);
        read(day, "top-speed", "20 mph");
        read(day, "motor-power", motor);
        read(day, "battery-voltage", says.volts() + " V");
        read(day, "battery-charge", says.ampereHours() + " Ah");
        read(day, "battery-energy", says.energyWh() + " Wh");
        read(day, "tyres", says.tyres());
        read(day, "tyre-pressure-low", "30 psi");
        read(day, "tyre-pressure-high", "50 psi");
        if (says.hasThrottle()) {
            read(day, "certification-mark", "a mark of a battery standard, on the battery");
            read(day, "certification-number", "none beside it");
        }
        read(day, "photo", "label.jpg; plate.jpg; sidewall.jpg");
    }

    private static void read(DayScript day, String name, String value) {
        day.reading("", name, value, "");
    }
}
