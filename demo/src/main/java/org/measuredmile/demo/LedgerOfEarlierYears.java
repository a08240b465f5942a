package org.measuredmile.demo;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.measuredmile.quantity.Unit;

/// Eighty results of earlier years as an old spreadsheet held them: lengths in three spellings, some cells blank, two
/// results that are equal to the inch.
///
/// Shape: always the same bytes; four blank results stand beside the eighty.
final class LedgerOfEarlierYears {
    private static final long SEED = 2027;
    private static final String[] CATEGORIES = {"cargo", "step-through", "folding", "commuter"};
    private static final String[] MODELS = {
        "Packhorse Mk I",
        "Sea Wall",
        "Barleymow",
        "Tollgate",
        "Osprey Lane",
        "Slipway",
        "Half Crown",
        "Groat",
        "Sandbar",
        "Lychgate",
        "Turnstile",
        "Weathercock",
        "Spinney",
        "Hayloft",
        "Ropewalk",
        "Saltpan",
        "Windrow",
        "Kiln",
        "Trestle",
        "Dovecote",
        "Milestone",
        "Fairlead",
        "Bellrope",
        "Cartwheel",
        "Hedgerow",
        "Lockgate",
        "Stile"
    };
    private static final int BIKES = MODELS.length;
    private static final int CUT_OFFS = 26;
    private static final int FIRST_OF_EQUALS = 8;
    private static final int SECOND_OF_EQUALS = 20;
    private static final List<Integer> BLANK_CUT_OFFS = List.of(3, 9, 14, 22);

    private final RandomGenerator random =
            RandomGeneratorFactory.of("L64X128MixRandom").create(SEED);
    private final StringBuilder text = new StringBuilder(
            "# measured-mile ledger 1\n" + "bike,category,trial,figure,variant,value,unit,date,runs,source,note\n");

    private LedgerOfEarlierYears() {}

    static byte[] bytes() {
        return new LedgerOfEarlierYears().write().getBytes(StandardCharsets.UTF_8);
    }

    private String write() {
        for (int i = 0; i < BIKES; i++) {
            stop(i);
        }
        for (int i = 0; i < BIKES; i++) {
            String pounds = String.format(Locale.ROOT, "%.1f", 38 + 45 * random.nextDouble());
            line(i, "weighin,weighin.mass,battery=in", pounds, "lb", "3", "");
        }
        for (int i = 0; i < CUT_OFFS; i++) {
            String mph = String.format(Locale.ROOT, "%.1f", 19.2 + 1.6 * random.nextDouble());
            line(i, "assistspeed,assistspeed.cut-off,drive=pedal", mph, "mph", "2", "");
            if (BLANK_CUT_OFFS.contains(i)) {
                line(i, "assistspeed,assistspeed.cut-off,drive=throttle", "", "", "", "not ridden");
            }
        }
        return text.toString();
    }

    private void stop(int index) {
        double inches = Math.rint(262 + 112 * random.nextDouble());
        String variant = "braking,braking.stopping-distance,method=tape surface=dry nominal=20-mph";
        if (index == FIRST_OF_EQUALS || index == SECOND_OF_EQUALS) {
            line(index, variant, "26 ft 6 in", "", "3", "");
            return;
        }
        long feet = (long) (inches / 12);
        switch (index % 3) {
            case 0 -> {
                String rest = String.format(Locale.ROOT, "%.2f", inches - 12 * feet + 0.99 * random.nextDouble());
                line(index, variant, "\"" + feet + "'" + rest + "\"\"\"", "", "3", "");
            }
            case 1 -> {
                String metres = String.format(Locale.ROOT, "%.2f", Unit.INCH.toSi(inches));
                line(index, variant, metres, "m", "3", "");
            }
            default -> line(index, variant, feet + " ft " + (long) (inches - 12 * feet) + " in", "", "3", "");
        }
    }

    private void line(int bike, String what, String value, String unit, String runs, String note) {
        String maker = Makers.NAMES.get(bike % Makers.NAMES.size());
        int year = 2027 + bike % 4;
        text.append(Makers.id(maker, MODELS[bike])).append(',');
        text.append(CATEGORIES[bike % CATEGORIES.length])
                .append(',')
                .append(what)
                .append(',');
        text.append(value).append(',').append(unit).append(',');
        text.append(String.format(Locale.ROOT, "%d-%02d-%02d", year, 4 + bike % 6, 1 + bike % 28));
        text.append(',')
                .append(runs)
                .append(",old spreadsheet (invented),")
                .append(note)
                .append('\n');
    }
}
