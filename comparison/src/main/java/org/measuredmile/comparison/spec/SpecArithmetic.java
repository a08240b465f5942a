package org.measuredmile.comparison.spec;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.spec.ClaimText.Claimed;
import org.measuredmile.comparison.spec.SpecEntry.Status;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.recording.day.Variant;

/// What lines of one sheet say of each other: volts times ampere-hours, permitted total less bike and rider, the
/// battery's energy per mass.
///
/// Source: nominal energy = nominal voltage × charge, the definition; 3.6 V a cell from memory; the band of energy per
/// mass of a pack in its case is common practice, no source.
final class SpecArithmetic {
    private static final double RIDER_KG = 80;
    private static final double CELL_V = 3.6;
    /// Beyond the rounding of the three: what makers round their own products by.
    private static final double LENIENT = 0.005;

    private static final double CELLS_APART = 0.06;
    private static final double LEAST_WH_PER_KG = 80;
    private static final double MOST_WH_PER_KG = 230;
    private static final double MASSES_APART_KG = 1;
    private static final double POUNDS_IN_A_KILOGRAM = 1 / Unit.POUND.toSi(1);

    private final TestedBike bike;
    private final List<SpecEntry> entries;
    private final List<String> sums = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();

    SpecArithmetic(TestedBike bike, List<SpecEntry> entries) {
        this.bike = bike;
        this.entries = new ArrayList<>(entries);
        product("the claim says", this::claimed);
        product("the bike says", this::seen);
        payload();
        density();
        power();
    }

    List<SpecEntry> entries() {
        return entries;
    }

    List<String> sums() {
        return sums;
    }

    List<Finding> findings() {
        return findings;
    }

    /// A single value of a line, with the step it was written with.
    private record Known(double si, double stepSi, Unit unit, SpecEntry entry, String field) {
        String words() {
            return SpecText.plain(si, unit);
        }

        double relativeStep() {
            return stepSi / 2 / Math.abs(si);
        }

        org.measuredmile.recording.Place place() {
            return ClaimText.at(entry.line(), field);
        }
    }

    private Optional<Known> claimed(String item) {
        return entries.stream()
                .filter(entry -> entry.item().id().equals(item))
                .flatMap(entry -> entry.claim().stream()
                        .filter(Claimed.class::isInstance)
                        .map(Claimed.class::cast)
                        .flatMap(claim -> single(claim, entry, "claimed").stream()))
                .findFirst();
    }

    private Optional<Known> seen(String item) {
        return entries.stream()
                .filter(entry -> entry.item().id().equals(item) && entry.isSeen())
                .filter(entry -> !entry.item().isWords())
                .flatMap(entry -> {
                    SpecLine line = entry.line();
                    var mark = new SpecLine(item, line.seen(), "", "", "", "", "", "", "", line.place());
                    return ClaimText.read(mark, entry.item().kind()) instanceof Claimed read
                            ? single(read, entry, "seen").stream()
                            : java.util.stream.Stream.empty();
                })
                .findFirst();
    }

    private static Optional<Known> single(Claimed claim, SpecEntry entry, String field) {
        double[] named = claim.wanted().named();
        return named.length == 1 && named[0] > 0
                ? Optional.of(new Known(named[0], claim.stepSi(), claim.unit(), entry, field))
                : Optional.empty();
    }

    /// Volts × ampere-hours against watt-hours, as one source says them.
    private void product(String says, Function<String, Optional<Known>> from) {
        var volts = from.apply("battery-voltage");
        var charge = from.apply("battery-charge");
        var energy = from.apply("battery-energy");
        if (volts.isEmpty() || charge.isEmpty()) {
            return;
        }
        double joules = volts.get().si() * charge.get().si();
        String words = volts.get().words() + " × " + charge.get().words();
        String whole = words + " = " + SpecText.plain(joules, Unit.WATT_HOUR);
        if (energy.isEmpty()) {
            sums.add(whole + (says.startsWith("the bike") ? ", by the plate" : ", by the claim"));
            return;
        }
        double allowed = LENIENT
                + volts.get().relativeStep()
                + charge.get().relativeStep()
                + energy.get().relativeStep();
        double apart = energy.get().si() / joules - 1;
        if (Math.abs(apart) <= allowed) {
            sums.add(whole + ", as " + says);
        } else if (!cells(volts.get(), charge.get(), energy.get())) {
            Known said = energy.get();
            findings.add(SpecSlip.BATTERY_PRODUCT.at(
                    said.place(),
                    volts.get().words(),
                    charge.get().words(),
                    SpecText.plain(joules, Unit.WATT_HOUR),
                    says,
                    said.words(),
                    perCent(apart),
                    slip(charge.get(), said, joules)));
            contradict(said.entry(), "volts × ampere-hours say " + SpecText.plain(joules, Unit.WATT_HOUR));
        }
    }

    /// Whether the energy is that of whole cells whose voltage the label rounds up.
    private boolean cells(Known volts, Known charge, Known energy) {
        double allowed = LENIENT + charge.relativeStep() + energy.relativeStep();
        long cells = Math.round(energy.si() / charge.si() / CELL_V);
        double ofCells = cells * CELL_V;
        boolean fits = cells > 0
                && Math.abs(ofCells / volts.si() - 1) <= CELLS_APART
                && Math.abs(energy.si() / (ofCells * charge.si()) - 1) <= allowed;
        if (fits) {
            findings.add(SpecSlip.BATTERY_CELLS.at(energy.place(), energy.words(), cells, volts.words()));
        }
        return fits;
    }

    private static String slip(Known charge, Known energy, double joules) {
        double chargeAh = Unit.AMPERE_HOUR.fromSi(charge.si());
        double energyWh = Unit.WATT_HOUR.fromSi(energy.si());
        if (Math.abs(chargeAh / energyWh - 1) < 0.01) {
            return chargeAh > 100 ? "; watt-hours stand under ampere-hours" : "; ampere-hours stand under watt-hours";
        }
        double ratio = energy.si() / joules;
        boolean thousand = Math.abs(ratio * 1000 - 1) < 0.05 || Math.abs(ratio / 1000 - 1) < 0.05;
        return thousand ? "; a thousandfold slip: Wh for kWh, or mAh for Ah" : "";
    }

    private static String perCent(double share) {
        return String.format(Locale.ROOT, "%+.1f %%", 100 * share).replace('-', '−');
    }

    private void contradict(SpecEntry entry, String why) {
        entries.replaceAll(one -> one.equals(entry)
                ? new SpecEntry(
                        one.item(),
                        one.line(),
                        one.claim(),
                        one.measured(),
                        Status.CONTRADICTED,
                        why,
                        one.derived(),
                        one.findings())
                : one);
    }

    /// Permitted total − bike − rider, with the battery and without it.
    private void payload() {
        Optional<Known> permitted = claimed("permitted-total");
        Optional<Double> whole = mass("in").or(() -> claimed("mass").map(Known::si));
        if (permitted.isEmpty() || whole.isEmpty()) {
            return;
        }
        Optional<Double> without = mass("out").or(() -> claimed("battery-mass").map(one -> whole.get() - one.si()));
        double left = permitted.get().si() - whole.get() - RIDER_KG;
        String sum = permitted.get().words() + " permitted − " + kg(whole.get()) + " bike − " + kg(RIDER_KG)
                + " rider = " + kg(left);
        sums.add(sum
                + without.map(bare ->
                                "; without the battery " + kg(permitted.get().si() - bare - RIDER_KG))
                        .orElse(""));
        if (left <= 0) {
            findings.add(SpecSlip.PAYLOAD_NONE.at(permitted.get().place(), sum));
        }
        claimed("payload").ifPresent(claim -> {
            boolean withRider = isRiderIncluded(claim.entry());
            double most = withRider ? left + RIDER_KG : left;
            if (claim.si() - claim.stepSi() / 2 > most + MASSES_APART_KG) {
                String words = withRider
                        ? permitted.get().words() + " permitted − " + kg(whole.get()) + " bike = " + kg(most)
                        : sum;
                findings.add(SpecSlip.PAYLOAD_PRODUCT.at(claim.place(), words, claim.words()));
                contradict(claim.entry(), "the permitted total leaves " + kg(most));
            }
        });
    }

    private static boolean isRiderIncluded(SpecEntry entry) {
        return ClaimConditions.read(entry.line().conditions(), entry.line().place())
                .values()
                .getOrDefault("rider", "")
                .equals("included");
    }

    private Optional<Double> mass(String battery) {
        return bike.of("weighin.mass").stream()
                .filter(result -> result.figure().key().variant().covers(Variant.of("battery", battery)))
                .findFirst()
                .map(result -> result.figure().value());
    }

    private static String kg(double kilograms) {
        return SpecText.plain(kilograms, Unit.KILOGRAM);
    }

    /// The battery's energy per mass against what packs have.
    private void density() {
        Optional<Known> energy = claimed("battery-energy").or(() -> seen("battery-energy"));
        Optional<Known> mass = claimed("battery-mass");
        if (energy.isEmpty() || mass.isEmpty()) {
            return;
        }
        double whPerKg = Unit.WATT_HOUR.fromSi(energy.get().si()) / mass.get().si();
        if (!isUsual(whPerKg)) {
            String slip = isUsual(whPerKg * POUNDS_IN_A_KILOGRAM)
                    ? "; with lb for kg it would fit"
                    : isUsual(whPerKg / POUNDS_IN_A_KILOGRAM) ? "; with kg for lb it would fit" : "";
            findings.add(SpecSlip.BATTERY_DENSITY.at(
                    mass.get().place(),
                    energy.get().words(),
                    mass.get().words(),
                    SpecText.plain(whPerKg, Unit.ONE),
                    SpecText.plain(LEAST_WH_PER_KG, Unit.ONE),
                    SpecText.plain(MOST_WH_PER_KG, Unit.ONE),
                    slip));
        }
    }

    private static boolean isUsual(double whPerKg) {
        return whPerKg >= LEAST_WH_PER_KG && whPerKg <= MOST_WH_PER_KG;
    }

    private void power() {
        Optional<Known> nominal = claimed("motor-power");
        Optional<Known> peak = claimed("peak-power");
        if (nominal.isPresent()
                && peak.isPresent()
                && nominal.get().si() > peak.get().si()) {
            findings.add(SpecSlip.POWER_REVERSED.at(
                    nominal.get().place(), nominal.get().words(), peak.get().words()));
        }
    }
}
