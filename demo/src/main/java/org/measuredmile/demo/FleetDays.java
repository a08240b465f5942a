package org.measuredmile.demo;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.recording.day.Variant;

/// The test days of the invented fleet: one a bike, for some a second with other firmware; on many of them
/// the control bike is stopped too.
///
/// Shape: from a seed; each day draws from a stream of its own, so that a change to one day leaves the
/// others alone.
public final class FleetDays {
    private static final LocalDate FIRST_DAY = LocalDate.of(2031, 3, 3);
    private static final int DAYS_TO_SECOND = 52;
    private static final List<String> RIDERS = List.of("T1", "T2", "R1");

    /// What goes differently, by bike; a second day of the same bike goes as planned.
    private static final Map<String, Twist> TWISTS = Map.of(
            "zornby-drayman", Twist.TYPED_ONLY,
            "haverdusk-shingle", Twist.RECORDING_LOST,
            "vessenby-halfpenny", Twist.ONE_HERTZ,
            "quorvane-thimble", Twist.NO_WIND,
            "pellowick-bramble", Twist.PROPOSED,
            "ostrelle-candlewick", Twist.RUN_VOID,
            "skelloway-causeway", Twist.FILMED,
            "mirefoot-osier", Twist.TYPED_ONLY);

    /// Bikes that came back with other firmware.
    private static final List<String> RIDDEN_TWICE = List.of(
            "zornby-packhorse", "ostrelle-lamplight", "vessenby-halfpenny", "hobbarn-withy", "plimble-quayside");

    /// The bike that came without a charger, and the one whose range ride ended in the rain.
    private static final String NO_CHARGER = "haverdusk-almanac";

    private static final String RAINED_OFF = "tullimar-breakwater";
    /// Whose batteries take a log.
    private static final List<String> LOGGED = List.of("cargo", "commuter");

    /// Coasts draw from streams of their own, numbered from here, so that they leave the other trials
    /// alone.
    private static final long COASTS = 10_000;

    /// The bike on whose day the causeway was closed.
    private static final String NO_CAUSEWAY = "corrowan-ferrylight";

    /// The bike on whose day the hill was closed.
    private static final String NO_HILL = "hobbarn-wainscot";

    /// Climbs draw from streams of their own, so far from those of the days.
    private static final long CLIMBS = 20_000;

    /// The control bike's mornings draw from streams of their own.
    private static final long CONTROL = 30_000;

    private FleetDays() {}

    /// All days, in order of date.
    public static List<DayFolder> of(long seed) {
        List<DayFolder> days = new ArrayList<>();
        List<Fleet.Member> members = Fleet.members();
        for (int i = 0; i < members.size(); i++) {
            Fleet.Member member = members.get(i);
            String id = member.bike().id();
            String rider = RIDERS.get(i % RIDERS.size());
            var luck = new Luck(stream(seed, COASTS + i), stream(seed, CLIMBS + i));
            var twist = TWISTS.getOrDefault(id, Twist.NONE);
            var first = new Plan(member, FIRST_DAY.plusDays(2L * i), rider, twist, luck);
            days.add(ride(first, "1.4", stream(seed, 2L * i)));
            if (ControlRides.isOn(i, member)) {
                days.add(control(i, first, stream(seed, CONTROL + i)));
            }
            if (RIDDEN_TWICE.contains(id)) {
                var second = new Plan(member, first.date().plusDays(DAYS_TO_SECOND), "T1", Twist.NONE, luck);
                days.add(ride(second, "2.0", stream(seed, 2L * i + 1)));
            }
        }
        days.sort(java.util.Comparator.comparing(DayFolder::name));
        return List.copyOf(days);
    }

    private record Plan(Fleet.Member member, LocalDate date, String rider, Twist twist, Luck luck) {}

    /// Where coasts and climbs draw from: streams of their own.
    private record Luck(RandomGenerator coasts, RandomGenerator climbs) {}

    private static RandomGenerator stream(long seed, long index) {
        // The odd factor spreads neighbouring days over the generator's seeds.
        return RandomGeneratorFactory.of("L64X128MixRandom").create(seed + index * 0x9E3779B97F4A7C15L);
    }

    private static DayFolder ride(Plan plan, String firmware, RandomGenerator random) {
        var day = new DayScript(plan.member(), plan.date(), plan.rider(), random);
        Conditions conditions = conditions(plan, random);
        MarkingScene.play(day, Fleet.says(plan.member().bike().id()));
        WeighInScene.play(day);
        if (!plan.member().bike().id().equals(NO_CAUSEWAY)) {
            CoastScene.play(
                    day,
                    plan.twist(),
                    new CoastScene.Morning(riderKg(plan), airKgPerM3(conditions)),
                    plan.luck().coasts());
        }
        BrakingScene.play(day, plan.twist(), plan.twist() == Twist.TYPED_ONLY ? 3 : 6);
        if (!plan.member().bike().id().equals(NO_CAUSEWAY)) {
            StartScene.play(day, plan.twist());
            AssistScene.play(day, plan.twist());
        }
        if (plan.member().bike().id().equals(NO_HILL)) {
            day.notRidden("climb", Variant.NONE, "Mill Hill was closed for resurfacing");
        } else {
            ClimbScene.play(day, plan.twist(), plan.luck().climbs());
        }
        EngagementScene.play(day);
        range(day, plan);
        notRidden(day);
        return day.folder(configuration(plan.member(), firmware, random), conditions);
    }

    /// A morning of the control bike beside another bike's day, by the same rider.
    private static DayFolder control(int index, Plan guest, RandomGenerator random) {
        var member = ControlRides.bike(index);
        var day = new DayScript(member, guest.date(), guest.rider(), random);
        var plan = new Plan(member, guest.date(), guest.rider(), Twist.NONE, guest.luck());
        var conditions = conditions(plan, random);
        ControlRides.play(day);
        return day.folder(configuration(member, "1.4", random), conditions);
    }

    private static void range(DayScript day, Plan plan) {
        String id = plan.member().bike().id();
        if (id.equals(NO_CHARGER)) {
            day.notRidden("range", Variant.NONE, "the bike came without its charger");
            return;
        }
        RangeScene.play(
                day,
                plan.twist(),
                LOGGED.contains(plan.member().bike().category()),
                id.equals(RAINED_OFF),
                riderKg(plan));
    }

    private static double riderKg(Plan plan) {
        return Town.riders().stream()
                .filter(rider -> rider.code().equals(plan.rider()))
                .findFirst()
                .orElseThrow()
                .massAsRiddenKg()
                .orElseThrow();
    }

    /// Dry air by the gas law, less what some humidity takes off at these temperatures.
    private static double airKgPerM3(Conditions conditions) {
        return 0.996
                * conditions.pressurePa().orElseThrow()
                / 287.05
                / conditions.airTemperatureK().orElseThrow();
    }

    private static void notRidden(DayScript day) {
        var bike = day.member().bike();
        if (bike.drive().equals("pedal")) {
            day.notRidden("standingstart", Variant.of("drive", "throttle"), "no throttle is fitted");
        }
        if (bike.id().equals(NO_CAUSEWAY)) {
            day.notRidden("standingstart", Variant.NONE, "the causeway was closed for a regatta");
            day.notRidden("assistspeed", Variant.NONE, "the causeway was closed for a regatta");
            day.notRidden("coastdown", Variant.NONE, "the causeway was closed for a regatta");
        }
    }

    private static Configuration configuration(Fleet.Member member, String firmware, RandomGenerator random) {
        double kilopascals = 240 + 10 * random.nextInt(8);
        String tyres = member.bike().wheelSize().replace(" in", "") + " x 2.0, as delivered";
        List<String> accessories =
                member.bike().category().equals("cargo") ? List.of("mudguards", "side rails") : List.of("mudguards");
        return new Configuration(
                firmware,
                "as delivered",
                tyres,
                OptionalDouble.of(kilopascals * 1000),
                OptionalDouble.of((kilopascals + 20) * 1000),
                accessories);
    }

    private static Conditions conditions(Plan plan, RandomGenerator random) {
        OptionalDouble windMps = OptionalDouble.of(tenths(0.3 + 2.4 * random.nextDouble()));
        double airK = 273.15 + tenths(8 + 12 * random.nextDouble());
        String[] from = {"north-east", "south-west", "west", "south"};
        return new Conditions(
                OptionalDouble.of(airK),
                OptionalDouble.of(100 * Math.rint(995 + 30 * random.nextDouble())),
                OptionalDouble.of(Math.rint(45 + 40 * random.nextDouble()) / 100),
                plan.twist() == Twist.NO_WIND ? OptionalDouble.empty() : windMps,
                plan.twist() == Twist.NO_WIND ? "" : from[random.nextInt(from.length)],
                "dry",
                OptionalDouble.of(Math.rint(88 + 12 * random.nextDouble()) / 100),
                OptionalDouble.of(airK + 1));
    }

    private static double tenths(double value) {
        return Math.rint(value * 10) / 10;
    }
}
