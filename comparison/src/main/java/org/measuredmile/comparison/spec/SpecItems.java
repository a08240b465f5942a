package org.measuredmile.comparison.spec;

import static org.measuredmile.comparison.spec.SpecItem.of;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.comparison.spec.SpecItem.Part;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Better;

/// The list of the items that a specification usually speaks of, front to back.
///
/// Source: every band is common practice, no source: what such parts measure on bikes that are sold; a value outside
/// is looked at again, never refused.
public final class SpecItems {
    static final String COMMON = "common practice, no source";

    /// Every item known, in the order of the spec sheet.
    public static final List<SpecItem> ALL = List.of(
            words(Part.FRONT, "tyres", "tyres").like("57-584, or 27.5 x 2.25").marked("tyres"),
            words(Part.FRONT, "wheel-size", "wheel size").like("27.5 in"),
            of(Part.FRONT, "tyre-pressure", "tyre pressure", QuantityKind.PRESSURE)
                    .from(100, 900, Unit.KILOPASCAL)
                    .like("30-50 psi"),
            of(Part.FRONT, "fork-travel", "fork travel", QuantityKind.PART_LENGTH)
                    .from(30, 200, Unit.MILLIMETRE)
                    .like("80 mm"),
            of(Part.FRONT, "rotor-front", "front rotor", QuantityKind.PART_LENGTH)
                    .from(140, 223, Unit.MILLIMETRE)
                    .like("180 mm"),
            words(Part.FRONT, "lights", "lights").like("front and rear, fed by the battery"),
            words(Part.COCKPIT, "brakes", "brakes").like("hydraulic discs, front and rear"),
            words(Part.COCKPIT, "display", "display"),
            of(Part.COCKPIT, "levels", "assist levels", QuantityKind.COUNT).from(1, 12, Unit.ONE),
            words(Part.FRAME, "frame", "frame"),
            of(Part.FRAME, "rider-height", "rider height", QuantityKind.LENGTH)
                    .from(130, 215, Unit.CENTIMETRE)
                    .like("5 ft 2 in to 6 ft 3 in"),
            words(Part.FRAME, "class-label", "class label")
                    .marked("class-label")
                    .like("Class 2"),
            of(Part.BATTERY, "battery-voltage", "battery voltage", QuantityKind.VOLTAGE)
                    .from(20, 80, Unit.VOLT)
                    .marked("battery-voltage"),
            of(Part.BATTERY, "battery-charge", "battery charge", QuantityKind.CHARGE)
                    .from(3, 60, Unit.AMPERE_HOUR)
                    .marked("battery-charge"),
            of(Part.BATTERY, "battery-energy", "battery energy", QuantityKind.ENERGY)
                    .better(Better.MORE)
                    .from(100, 3000, Unit.WATT_HOUR)
                    .marked("battery-energy"),
            of(Part.BATTERY, "battery-mass", "battery mass", QuantityKind.MASS)
                    .better(Better.LESS)
                    .measuredBy("weighin.battery-mass", Variant.of("battery", "alone"), Map.of())
                    .from(0.8, 20, Unit.KILOGRAM),
            of(Part.BATTERY, "charging-time", "charging time", QuantityKind.TIME)
                    .better(Better.LESS)
                    .measuredBy("charging.time", Variant.NONE, Map.of())
                    .from(1, 16, Unit.HOUR)
                    .like("5 h"),
            of(Part.DRIVE, "motor-power", "motor power, nominal", QuantityKind.POWER)
                    .from(100, 1500, Unit.WATT)
                    .marked("motor-power"),
            of(Part.DRIVE, "peak-power", "motor power, peak", QuantityKind.POWER)
                    .from(200, 4000, Unit.WATT),
            of(Part.DRIVE, "torque", "motor torque", QuantityKind.TORQUE).from(15, 200, Unit.NEWTON_METRE),
            of(Part.DRIVE, "crank-length", "crank length", QuantityKind.PART_LENGTH)
                    .from(125, 185, Unit.MILLIMETRE),
            of(Part.DRIVE, "chain-teeth", "teeth in front", QuantityKind.COUNT).from(20, 60, Unit.ONE),
            words(Part.DRIVE, "cassette", "cassette").like("11-34, 8 gears"),
            of(Part.REAR, "rotor-rear", "rear rotor", QuantityKind.PART_LENGTH).from(140, 223, Unit.MILLIMETRE),
            of(Part.REAR, "rack-load", "load on the rack", QuantityKind.MASS)
                    .better(Better.MORE)
                    .from(3, 120, Unit.KILOGRAM),
            of(Part.WHOLE, "mass", "mass", QuantityKind.MASS)
                    .better(Better.LESS)
                    .measuredBy(
                            "weighin.mass",
                            Variant.of("battery", "in"),
                            Map.of(
                                    "battery=removed", Variant.of("battery", "out"),
                                    "battery=out", Variant.of("battery", "out")))
                    .from(9, 100, Unit.KILOGRAM),
            of(Part.WHOLE, "permitted-total", "permitted total", QuantityKind.MASS)
                    .better(Better.MORE)
                    .from(80, 350, Unit.KILOGRAM)
                    .marked("permitted-total"),
            of(Part.WHOLE, "payload", "payload beside the rider", QuantityKind.MASS)
                    .better(Better.MORE)
                    .measuredBy("weighin.payload", Variant.of("battery", "in"), Map.of())
                    .from(5, 250, Unit.KILOGRAM),
            of(Part.ROAD, "top-assisted-speed", "top assisted speed", QuantityKind.SPEED)
                    .measuredBy("assistspeed.cut-off", Variant.of("drive", "pedal"), Map.of())
                    .from(9, 31, Unit.MILE_PER_HOUR)
                    .marked("top-speed"),
            of(Part.ROAD, "throttle-speed", "top speed by throttle", QuantityKind.SPEED)
                    .measuredBy("assistspeed.speed", Variant.of("drive", "throttle"), Map.of())
                    .from(3, 31, Unit.MILE_PER_HOUR),
            of(Part.ROAD, "range", "range", QuantityKind.DISTANCE)
                    .better(Better.MORE)
                    .measuredBy(
                            "range.distance",
                            Variant.NONE,
                            Map.of(
                                    "level=lowest", Variant.of("levelRole", "lowest"),
                                    "level=highest", Variant.of("levelRole", "highest")))
                    .from(5, 150, Unit.MILE),
            words(Part.PAPERS, "certification-mark", "certification mark").marked("certification-mark"),
            words(Part.PAPERS, "price", "price"),
            words(Part.PAPERS, "warranty", "warranty"));

    private SpecItems() {}

    /// The item that spec.csv calls by an id; empty for one that is not known here.
    public static Optional<SpecItem> find(String id) {
        return ALL.stream().filter(item -> item.id().equals(id)).findFirst();
    }

    /// The item of an id; one that is not known here is kept as words at the end.
    public static SpecItem named(String id) {
        return find(id).orElseGet(() -> words(Part.OTHER, id, id.replace('-', ' ')));
    }

    private static SpecItem words(Part part, String id, String words) {
        return of(part, id, words, QuantityKind.WORD);
    }
}
