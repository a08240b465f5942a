package org.measuredmile.comparison.shortlist;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Trials;

/// One term of a wish list: `name[key=value,…] sign value`, written without spaces.
final class WishTerm {
    static final String PAYLOAD = "weighin.payload";

    private static final Pattern TERM =
            Pattern.compile("(?<name>[A-Za-z][A-Za-z0-9.-]*)(?<variant>\\[[^\\]]*])?(?<sign><=|>=|=|<|>)(?<value>.+)");
    private static final Pattern PRICE = Pattern.compile("(?<amount>\\d{1,9}(\\.\\d{1,2})?)(?<currency>[A-Z]{3})?");
    /// Short names of figures that readers ask for, each with how it is usually meant.
    private static final Map<String, Short> SHORT = Map.of(
            "mass", new Short("weighin.mass", Variant.of("battery", "in")),
            "carries", new Short(PAYLOAD, Variant.NONE),
            "range", new Short("range.distance", Variant.of("levelRole", "highest")),
            "stops", new Short("braking.stopping-distance", Variant.NONE));
    private static final List<String> DRIVES = List.of("throttle", "pedal", "both");
    private static final List<String> SENSORS = List.of("cadence", "torque", "unknown");

    private final String written;
    private final String name;
    private final String variant;
    private final String sign;
    private final String value;
    private final List<Finding> faults;

    private record Short(String figure, Variant usual) {}

    private WishTerm(String written, Matcher term, List<Finding> faults) {
        this.written = written;
        this.name = term.group("name");
        this.variant = Optional.ofNullable(term.group("variant")).orElse("");
        this.sign = term.group("sign");
        this.value = term.group("value");
        this.faults = faults;
    }

    /// The wish of a term; empty when it has faults, which are added.
    static Optional<Wish> read(String written, String term, List<Finding> faults) {
        Matcher matcher = TERM.matcher(term);
        if (!matcher.matches()) {
            faults.add(fault(
                    written, "it is no wish", "write a name, a sign and a value without spaces, as in mass<25kg"));
            return Optional.empty();
        }
        return new WishTerm(written, matcher, faults).wish();
    }

    static Finding fault(String term, String message, String remedy) {
        return Finding.refused("wish", new Place("", term), message, remedy);
    }

    private Optional<Wish> refuse(String message, String remedy) {
        faults.add(fault(written, message, remedy));
        return Optional.empty();
    }

    private Optional<Wish> wish() {
        var own = Optional.ofNullable(SHORT.get(name));
        var figure = Trials.figure(own.map(Short::figure).orElse(name));
        if (figure.isPresent()) {
            return ofFigure(figure.get(), own.map(Short::usual).orElse(Variant.NONE));
        }
        if (!variant.isEmpty()) {
            return refuse("only a figure has a variant", "leave " + variant + " out");
        }
        return switch (name) {
            case "climbs" -> climbs();
            case "price" -> price();
            case "battery" -> claim("battery-energy", QuantityKind.ENERGY, "battery>=500Wh");
            case "category", "maker", "drive", "sensor", "throttle" ->
                fact(Wish.Fact.valueOf(name.toUpperCase(Locale.ROOT)));
            default -> refuse("no wish is called \"" + name + "\"", known());
        };
    }

    private static String known() {
        return "use climbs, price, carries, mass, range, stops, battery, category, maker, drive, sensor or throttle, "
                + "or a figure's id, as in " + WishList.FIGURE_EXAMPLE;
    }

    private String text() {
        return name + variant + sign + value;
    }

    private Optional<Wish> climbs() {
        if (sign.startsWith("<") || sign.equals(">")) {
            return refuse("a bike that climbs a grade climbs every flatter one", "write climbs=" + value);
        }
        return switch (QuantityText.parse(value, QuantityKind.RATIO)) {
            case Parsed.Fault(String message, String _) -> refuse(message, "write the grade in per cent: climbs=10%");
            case Parsed.Value read ->
                read.si() > 0 && read.si() <= 1
                        ? Optional.of(new Wish.Climbs(read.si(), "climbs=" + value))
                        : refuse("no road is that steep", "write a grade above 0 and up to 100 %, as in climbs=10%");
        };
    }

    private Optional<Wish.Side> side(String example) {
        var side = Arrays.stream(Wish.Side.values())
                .filter(one -> one.sign().equals(sign))
                .findFirst();
        if (side.isEmpty()) {
            refuse("a value that was measured or stated is hardly ever just this one", "write " + example);
        }
        return side;
    }

    private Optional<Wish> price() {
        Matcher price = PRICE.matcher(value);
        if (!price.matches()) {
            return refuse(
                    "\"" + value + "\" is no price",
                    "write an amount without commas, and its currency by three letters where you like, as in "
                            + "price<2000USD");
        }
        return side("price<=" + value)
                .map(side -> new Wish.OfPrice(
                        side,
                        Double.parseDouble(price.group("amount")),
                        Optional.ofNullable(price.group("currency")).orElse(""),
                        text()));
    }

    private Optional<Wish> claim(String item, QuantityKind kind, String example) {
        return switch (QuantityText.parse(value, kind)) {
            case Parsed.Fault(String message, String remedy) -> refuse(message, remedy + ", as in " + example);
            case Parsed.Value read ->
                side(name + ">=" + value).map(side -> new Wish.OfClaim(item, kind, side, read.si(), text()));
        };
    }

    private Optional<Wish> fact(Wish.Fact fact) {
        if (!sign.equals("=")) {
            return refuse(name + " is a word, not a number", "write " + name + "=" + value);
        }
        List<String> allowed = switch (fact) {
            case DRIVE -> DRIVES;
            case SENSOR -> SENSORS;
            case THROTTLE -> List.of("yes", "no");
            case CATEGORY, MAKER -> List.of();
        };
        if (!allowed.isEmpty() && !allowed.contains(value)) {
            return refuse("\"" + value + "\" is not known here", "write " + name + "=" + String.join(" or ", allowed));
        }
        return Optional.of(new Wish.OfFact(fact, value, text()));
    }

    private Optional<Wish> ofFigure(FigureSpec figure, Variant usual) {
        var trial = Trials.delivering(figure.id()).orElseThrow().declaration();
        var asked = asked(trial, figure);
        var limit = QuantityText.parse(value, figure.kind());
        if (limit instanceof Parsed.Fault(String message, String remedy)) {
            refuse(message, remedy);
        }
        String opposite = figure.better() == Better.MORE ? ">=" : "<=";
        var side = side(name + variant + opposite + value);
        if (asked.isEmpty() || side.isEmpty() || !(limit instanceof Parsed.Value read)) {
            return Optional.empty();
        }
        var whole = new TreeMap<>(usual.values());
        whole.putAll(asked.get().values());
        return Optional.of(new Wish.OfFigure(name, figure.id(), Variant.of(whole), side.get(), read.si(), text()));
    }

    /// The stated part of a figure's variant.
    private Optional<Variant> asked(Declaration trial, FigureSpec figure) {
        var asked = Variant.NONE;
        boolean isClear = true;
        String inside = variant.isEmpty() ? "" : variant.substring(1, variant.length() - 1);
        for (String pair : inside.isEmpty() ? new String[0] : inside.split(",")) {
            int equals = pair.indexOf('=');
            String key = equals < 0 ? pair : pair.substring(0, equals);
            String wanted = equals < 0 ? "" : pair.substring(equals + 1);
            var declared = trial.variant(key);
            boolean isKnown = figure.variantKeys().contains(key);
            if (!isKnown) {
                isClear = false;
                refuse("\"" + key + "\" is no way in which results of " + figure.id() + " differ", ways(figure));
            } else if (wanted.isEmpty()
                    || declared.filter(one -> !one.admits(wanted)).isPresent()) {
                isClear = false;
                String values = declared.map(one -> one.values().stream()
                                .map(choice -> key + "=" + choice.value())
                                .collect(Collectors.joining(" or ")))
                        .orElse("");
                refuse("\"" + pair + "\" says no " + key, "write " + (values.isEmpty() ? key + "=…" : values));
            } else {
                asked = asked.with(key, wanted);
            }
        }
        return isClear ? Optional.of(asked) : Optional.empty();
    }

    private static String ways(FigureSpec figure) {
        return figure.variantKeys().isEmpty()
                ? "write it without brackets"
                : "use " + String.join(", ", figure.variantKeys());
    }
}
