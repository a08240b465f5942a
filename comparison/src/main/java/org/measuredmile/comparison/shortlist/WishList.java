package org.measuredmile.comparison.shortlist;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.recording.Finding;

/// What a reader wants of a bike: `climbs=10% rider=110kg price<2000 carries>=40kg`.
///
/// Shape: terms without spaces inside, separated by spaces; every one of them must hold. `rider` is no wish of its own:
/// it says for whom `climbs` and `carries` are asked, and is the reference rider of 80 kg where nobody says.
/// Unit: `riderKg` with clothes and bags, in kilograms.
public record WishList(List<Wish> wishes, OptionalDouble riderKg, String rider) {
    /// How a wish about any figure is written: its id, its variant in brackets, a sign and a value.
    public static final String FIGURE_EXAMPLE = "standingstart.time-to[drive=throttle,to=20-mph]<=7s";

    private static final int MOST_WISHES = 20;
    private static final double LEAST_RIDER_KG = 20;
    private static final double MOST_RIDER_KG = 250;

    public WishList {
        wishes = List.copyOf(wishes);
    }

    /// What came of reading a text.
    public sealed interface Read {
        record Stated(WishList list) implements Read {}

        /// Every term that cannot be used, each with what to write instead.
        record Unclear(List<Finding> faults) implements Read {
            public Unclear {
                faults = List.copyOf(faults);
            }
        }
    }

    /// Reads a list of wishes; all faults at once.
    public static Read parse(String text) {
        var faults = new ArrayList<Finding>();
        var wishes = new ArrayList<Wish>();
        var seen = new HashSet<String>();
        var riderKg = OptionalDouble.empty();
        String rider = "";
        String plain = text.strip();
        for (String written : plain.isEmpty() ? new String[0] : plain.split("\\s+")) {
            String term = written.replace("≤", "<=").replace("≥", ">=");
            if (term.startsWith("rider=")) {
                if (!rider.isEmpty()) {
                    faults.add(WishTerm.fault(written, "rider stands twice", "leave one of them out"));
                }
                rider = term.substring("rider=".length());
                riderKg = riderKg(written, rider, faults);
            } else {
                WishTerm.read(written, term, faults)
                        .filter(wish -> isNew(wish, seen, faults))
                        .ifPresent(wishes::add);
            }
        }
        var list = new WishList(wishes, riderKg, rider);
        list.whole(faults);
        return faults.isEmpty() ? new Read.Stated(list) : new Read.Unclear(faults);
    }

    private static boolean isNew(Wish wish, HashSet<String> seen, List<Finding> faults) {
        if (!seen.add(wish.text())) {
            faults.add(WishTerm.fault(wish.text(), "it stands twice", "leave one of them out"));
            return false;
        }
        return true;
    }

    private static OptionalDouble riderKg(String written, String value, List<Finding> faults) {
        switch (QuantityText.parse(value, QuantityKind.MASS)) {
            case Parsed.Fault(String message, String remedy) ->
                faults.add(WishTerm.fault(written, message, remedy + ", as in rider=110kg"));
            case Parsed.Value read -> {
                if (read.si() >= LEAST_RIDER_KG && read.si() <= MOST_RIDER_KG) {
                    return OptionalDouble.of(read.si());
                }
                faults.add(WishTerm.fault(
                        written, "no rider weighs that much or that little", "write a mass from 20 to 250 kg"));
            }
        }
        return OptionalDouble.empty();
    }

    /// Faults of the list as a whole.
    private void whole(List<Finding> faults) {
        if (wishes.isEmpty() && faults.isEmpty()) {
            String what = rider.isEmpty() ? "nothing is wished for" : "rider says for whom, but nothing is wished for";
            faults.add(WishTerm.fault(rider.isEmpty() ? "" : "rider=" + rider, what, "write a wish, as in climbs=10%"));
        } else if (!rider.isEmpty() && faults.isEmpty() && wishes.stream().noneMatch(WishList::dependsOnTheRider)) {
            faults.add(WishTerm.fault(
                    "rider=" + rider,
                    "no wish here depends on the rider's mass",
                    "leave it out, or add climbs=10% or carries>=40kg"));
        }
        if (wishes.size() > MOST_WISHES) {
            faults.add(WishTerm.fault("", wishes.size() + " wishes", "write at most " + MOST_WISHES));
        }
    }

    /// The rider's mass as it was written, or as it is taken.
    String riderWords() {
        return rider.isEmpty() ? "80 kg" : rider;
    }

    /// The ids of every figure that answers them.
    public SortedSet<String> figures() {
        var ids = new TreeSet<String>();
        for (Wish wish : wishes) {
            if (wish instanceof Wish.Climbs) {
                ids.addAll(ClimbingAbility.FIGURES);
            } else if (wish instanceof Wish.OfFigure of) {
                ids.add(of.figure());
                ids.addAll(of.figure().equals(Replies.RANGE) ? List.of(Replies.RIDDEN_AT_LEAST) : List.of());
            }
        }
        return ids;
    }

    static boolean dependsOnTheRider(Wish wish) {
        return wish instanceof Wish.Climbs
                || (wish instanceof Wish.OfFigure of && of.figure().equals(WishTerm.PAYLOAD));
    }

    /// The list as it is printed back: reading it again gives this same list.
    public String expression() {
        String words = wishes.stream().map(Wish::text).collect(Collectors.joining(" "));
        return rider.isEmpty() ? words : words + " rider=" + rider;
    }
}
