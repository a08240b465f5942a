package org.measuredmile.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.SpecLine;

/// What the invented makers say of their bikes, front to back, with the slips that makers' pages have.
final class FleetSpec {
    /// What the makers print for a battery of so many kilograms, case and all.
    private static final double WATT_HOURS_PER_KG = 180;

    private static final double LIGHT_BATTERY_WH = 430;
    private static final String SOURCE = "the maker's page (invented)";

    private static final Map<Integer, String> TYRES = Map.of(
            14,
            "14 x 1.75",
            16,
            "16 x 1.95",
            20,
            "20 x 2.15",
            24,
            "24 x 2.4",
            26,
            "26 x 2.3",
            27,
            "27.5 x 2.2",
            28,
            "700 x 45C");

    /// Lines that a maker got wrong, by bike: the item, and what stands there.
    private static final Map<String, List<String>> SLIPS = Map.of(
            // Volts × ampere-hours are not the watt-hours beside them.
            "hobbarn-wainscot", List.of("battery-charge", "14.0", "Ah"),
            // Inches under millimetres.
            "skelloway-marram", List.of("fork-travel", "3.1", "mm"),
            "pellowick-sloe", List.of("rider-height", "6 ft 2 in to 4 ft 11 in", ""),
            // Pounds under kilograms.
            "plimble-satchel", List.of("battery-mass", "4.6", "kg"),
            // More than the permitted total leaves.
            "vessenby-halfpenny", List.of("payload", "110", "kg"));

    private final Facts facts;
    private final List<SpecLine> lines = new ArrayList<>();

    private FleetSpec(Facts facts) {
        this.facts = facts;
    }

    /// What the lines are made from.
    ///
    /// Unit: claimed range in miles.
    record Facts(
            String id,
            String category,
            int wheelInches,
            double claimedKg,
            double batteryKg,
            int permittedKg,
            String rangeMi,
            int powerW,
            boolean hasThrottle,
            int levels) {
        int energyWh() {
            return 10 * (int) Math.round(batteryKg * WATT_HOURS_PER_KG / 10);
        }

        int volts() {
            return energyWh() < LIGHT_BATTERY_WH ? 36 : 48;
        }

        String ampereHours() {
            return String.format(Locale.ROOT, "%.1f", (double) energyWh() / volts());
        }

        String tyres() {
            return TYRES.getOrDefault(wheelInches, wheelInches + " in");
        }

        String classLabel() {
            return hasThrottle ? "Class 2" : "Class 1";
        }
    }

    /// All lines of a bike, in the order in which a maker's page has them.
    static List<SpecLine> of(Facts facts) {
        return new FleetSpec(facts).all();
    }

    private List<SpecLine> all() {
        boolean isCargo = facts.category().equals("cargo");
        boolean isFolding = facts.category().equals("folding");
        front(isCargo, isFolding);
        frame(isCargo, isFolding);
        battery();
        drive(isFolding);
        add("rotor-rear", isCargo ? "180" : "160", "mm", "");
        add("rack-load", isCargo ? "80" : isFolding ? "10" : "25", "kg", "");
        String pounds = String.format(Locale.ROOT, "%.0f", Unit.POUND.fromSi(facts.claimedKg()));
        add("mass", pounds, "lb", "battery=in");
        add("permitted-total", Integer.toString(facts.permittedKg()), "kg", "");
        long payload = Math.round(facts.permittedKg() - facts.claimedKg() - 1);
        add("payload", Long.toString(payload), "kg", "rider=included");
        add("top-assisted-speed", "20", "mph", "");
        if (facts.hasThrottle()) {
            add("throttle-speed", "up to 20", "mph", "");
        }
        add("range", "up to " + facts.rangeMi(), "mi", "rider-mass=75 kg level=lowest");
        add("warranty", "2 years, battery 1 year", "", "");
        return List.copyOf(lines);
    }

    private void front(boolean isCargo, boolean isFolding) {
        add("tyres", facts.tyres(), "", "");
        add("wheel-size", facts.wheelInches() + " in", "", "");
        add("tyre-pressure", "30-50", "psi", "");
        if (!isFolding) {
            add("fork-travel", isCargo ? "80" : facts.category().equals("commuter") ? "63" : "50", "mm", "");
        }
        add("rotor-front", isCargo ? "203" : isFolding ? "160" : "180", "mm", "");
        add("lights", "front and rear, fed by the battery", "", "");
    }

    private void frame(boolean isCargo, boolean isFolding) {
        add("brakes", "hydraulic discs, front and rear", "", "");
        add("levels", Integer.toString(facts.levels()), "", "");
        add("frame", isFolding ? "aluminium, folds in the middle" : "aluminium", "", "");
        String tall =
                isCargo ? "5 ft 1 in to 6 ft 5 in" : isFolding ? "4 ft 11 in to 6 ft 2 in" : "5 ft 2 in to 6 ft 3 in";
        add("rider-height", tall, "", "");
        add("class-label", facts.classLabel(), "", "");
    }

    private void battery() {
        add("battery-voltage", Integer.toString(facts.volts()), "V", "");
        add("battery-charge", facts.ampereHours(), "Ah", "");
        add("battery-energy", Integer.toString(facts.energyWh()), "Wh", "");
        add("battery-mass", String.format(Locale.ROOT, "%.1f", facts.batteryKg()), "kg", "");
        add("charging-time", facts.energyWh() > LIGHT_BATTERY_WH ? "5-6" : "4-5", "h", "charger-current=2 A");
    }

    private void drive(boolean isFolding) {
        add("motor-power", Integer.toString(facts.powerW()), "W", "");
        add("peak-power", Integer.toString(50 * Math.round(facts.powerW() * 1.7f / 50)), "W", "");
        add("torque", Integer.toString(5 * Math.round((35 + facts.powerW() / 15f) / 5)), "Nm", "");
        add("crank-length", "170", "mm", "");
        add("chain-teeth", isFolding ? "48" : "42", "", "");
        add("cassette", isFolding ? "one gear, 16" : "11-34, 8 gears", "", "");
    }

    private void add(String item, String claimed, String unit, String conditions) {
        List<String> slip = SLIPS.getOrDefault(facts.id(), List.of(""));
        boolean isWrong = slip.getFirst().equals(item);
        lines.add(new SpecLine(
                item,
                isWrong ? slip.get(1) : claimed,
                isWrong ? slip.get(2) : unit,
                conditions,
                SOURCE,
                Fleet.SPEC_DATE,
                seen(item),
                item.equals("rotor-front") && hasPhotos() ? "front-wheel.jpg" : "",
                "",
                Place.NOWHERE));
    }

    /// Some crews write what they see beside the claim, as soon as the bike stands there.
    private String seen(String item) {
        return switch (item) {
            case "rotor-front" -> hasPhotos() ? (facts.category().equals("cargo") ? "203 mm" : "180 mm") : "";
            case "brakes" -> hasPhotos() ? "hydraulic, no maker's name on the levers" : "";
            case "lights" -> hasPhotos() ? "front and rear, both work" : "";
            default -> "";
        };
    }

    private boolean hasPhotos() {
        return !facts.category().equals("folding") && facts.levels() != 5;
    }
}
