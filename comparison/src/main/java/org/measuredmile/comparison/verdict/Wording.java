package org.measuredmile.comparison.verdict;

import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.spec.ClaimText.Claimed;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.Printed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.Trials;

/// The sentence to publish for a verdict, in one system of units with the other in brackets.
///
/// Shape: numbers rounded once, from unrounded values; no-break spaces hold a number and its unit together.
public record Wording(UnitSystem system) {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.UK);
    /// Arms of an interval that differ by more than this share are printed as its ends.
    private static final double LOPSIDED = 0.1;

    /// The sentence for a verdict on a bike.
    public String of(String bike, ClaimVerdict verdict) {
        String sentence = switch (verdict.verdict()) {
            case MEETS -> bike(bike) + " meets its " + claimed(verdict) + ": " + found(verdict) + ".";
            case FALLS_SHORT -> fallsShort(bike, verdict);
            case CANNOT_TELL -> cannotTell(bike, verdict);
        };
        return sentence + agreements(verdict);
    }

    private static String bike(String title) {
        return "The " + title;
    }

    /// `claimed mass of “61.0 lb”`, with the claim's conditions in brackets.
    private static String claimed(ClaimVerdict verdict) {
        String conditions = conditions(verdict.claim());
        return "claimed " + verdict.item().words() + " of “" + verdict.claim().words() + "”"
                + (conditions.isEmpty() ? "" : " (" + conditions + ")");
    }

    /// A claim's conditions as it states them: `rider 75 kg, lowest level`.
    public static String conditions(Claimed claim) {
        return claim.conditions().entrySet().stream()
                .map(one -> condition(one.getKey(), one.getValue()))
                .collect(Collectors.joining(", "));
    }

    private static String condition(String key, String value) {
        return switch (key) {
            case "rider-mass" -> "rider " + value;
            case "level" -> value.matches("\\d+") ? "level " + value : value + " level";
            case "drive" -> value.equals("throttle") ? "by throttle alone" : value;
            default -> key.replace('-', ' ') + " " + value;
        };
    }

    private String fallsShort(String bike, ClaimVerdict verdict) {
        var by = verdict.decisive().orElseThrow();
        if (verdict.item().better() == Better.NEITHER) {
            boolean isUnder = verdict.asked().missedBySi(by.value()) < 0;
            return bike(bike) + " does not agree with its " + claimed(verdict) + ": " + found(verdict) + ", "
                    + missed(verdict, by) + (isUnder ? " below it" : " above it") + ".";
        }
        String even = verdict.isBestCase() ? " even at its best" : "";
        return bike(bike) + " falls short of its " + claimed(verdict) + even + ", by " + missed(verdict, by) + ": "
                + found(verdict) + ".";
    }

    private String cannotTell(String bike, ClaimVerdict verdict) {
        var sentence = new StringBuilder(
                "Whether " + lower(bike(bike)) + " meets its " + claimed(verdict) + " we can’t tell: ");
        String found = found(verdict);
        sentence.append(verdict.reason().isEmpty() ? found : verdict.reason());
        if (verdict.reason().isEmpty() && verdict.probability().isPresent()) {
            sentence.append("; the chance that the claim holds is ")
                    .append(QuantityPrinter.chance(verdict.probability().getAsDouble()));
        }
        sentence.append('.');
        if (!verdict.reason().isEmpty() && !found.isEmpty()) {
            sentence.append(' ').append(capital(found)).append('.');
        }
        verdict.moreRuns().ifPresent(more -> sentence.append(' ').append(more(more)));
        if (!verdict.remedy().isEmpty()) {
            sentence.append(" What would do: ").append(verdict.remedy()).append('.');
        }
        return sentence.toString();
    }

    private static String lower(String words) {
        return words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1);
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /// How much more of the same could decide.
    public static String more(MoreRuns more) {
        int number = more.runs() + more.days();
        String what = more.runs() > 0 ? "run" : "day";
        String alike = more.runs() > 0 ? "" : " alike";
        return number + " more " + what + (number == 1 ? "" : "s") + alike
                + " would decide it, should the value stay what it is.";
    }

    /// What was found, and under which conditions it stands; empty where nothing was measured.
    private String found(ClaimVerdict verdict) {
        var measured = verdict.measured().map(tried -> asMeasured(tried));
        var brought = verdict.atConditions().map(tried -> brought(tried, measured.isPresent()));
        return Stream.of(measured, brought).flatMap(Optional::stream).collect(Collectors.joining("; "));
    }

    private String asMeasured(Tried tried) {
        var result = tried.result();
        String figure = result.figure().key().figure();
        String how = how(result);
        return verb(figure) + " "
                + value(tried.value(), tried.known(), result.figure().kind()) + (how.isEmpty() ? "" : ", " + how + ",")
                + " on " + DAY.format(result.date());
    }

    private String brought(Tried tried, boolean isBeside) {
        var under = tried.under().orElseThrow();
        String value =
                value(tried.value(), tried.known(), tried.result().figure().kind());
        String how = under(under);
        if (!isBeside) {
            return "the ride of " + DAY.format(tried.result().date()) + ", brought to " + how + ", gives " + value;
        }
        return (under.isBest() ? "at the best conditions that the claim admits, " : "for ") + how + ", that is "
                + value;
    }

    /// The conditions that a result was brought to.
    public String under(Tried.Under under) {
        String wind = under.windMps() == 0 ? "no wind" : "wind of " + plain(under.windMps(), QuantityKind.SPEED, 0);
        String speed = under.isSlower()
                ? ", the speed of the lowest level (" + plain(under.meanMps(), QuantityKind.SPEED, 1) + ")"
                : "";
        return "a rider of " + plain(under.riderKg(), QuantityKind.MASS, 0) + " with gear, "
                + plain(under.airK(), QuantityKind.TEMPERATURE, 0) + ", " + wind + " and a level road" + speed;
    }

    private static String verb(String figure) {
        return switch (figure) {
            case "weighin.mass", "weighin.battery-mass" -> "we weighed";
            case "range.distance" -> "it went";
            case "range.at-least" -> "it went at least";
            case "assistspeed.cut-off" -> "help ended at";
            case "assistspeed.speed" -> "it held";
            default -> "we measured";
        };
    }

    /// How a result was come by: `with its battery`, `at full throttle`, `from 20 mph, in the dry`.
    public static String how(TestedBike.Result result) {
        var variant = Claims.variant(result);
        String battery = variant.get("battery").orElse("");
        return switch (result.figure().key().figure()) {
            case "weighin.mass", "weighin.payload" ->
                battery.equals("out") ? "without its battery" : "with its battery";
            case "weighin.battery-mass" -> "";
            case "range.distance", "range.at-least" -> "at " + RangeConditions.levelWords(variant);
            default -> words(result.figure().key());
        };
    }

    private static String words(FigureKey key) {
        return Trials.delivering(key.figure())
                .map(trial -> trial.declaration().words(key.variant()))
                .orElse(key.variant().text());
    }

    private String agreements(ClaimVerdict verdict) {
        var words = verdict.agreesWith().stream()
                .map(one -> noun(verdict) + " "
                        + how(one.result()) + differently(verdict, one) + ", "
                        + value(
                                one.result().figure().value(),
                                one.result().figure().anyDay(),
                                one.result().figure().kind()))
                .toList();
        return words.isEmpty() ? "" : " The claimed value agrees with " + String.join("; and with ", words) + ".";
    }

    private static String noun(ClaimVerdict verdict) {
        return "the " + verdict.item().words();
    }

    /// The date, where only the configuration differs.
    private static String differently(ClaimVerdict verdict, Agreement other) {
        boolean isAlike = verdict.measured()
                .filter(tried -> tried.result()
                        .figure()
                        .key()
                        .equals(other.result().figure().key()))
                .isPresent();
        return isAlike ? ", as it was set up on " + DAY.format(other.result().date()) : "";
    }

    /// By how much the whole interval misses the claim: `7.1 to 7.5 lb (3.2 to 3.4 kg)`.
    public String missed(ClaimVerdict verdict, Tried by) {
        double one = Math.abs(verdict.asked().missedBySi(by.known().interval95().low()));
        double other =
                Math.abs(verdict.asked().missedBySi(by.known().interval95().high()));
        var missed = new Interval(Math.min(one, other), Math.max(one, other));
        var kind = by.result().figure().kind();
        return both(printer -> printer.interval(missed, kind).replaceFirst("^from\u00a0", ""));
    }

    /// A value with its interval, in both systems.
    public String value(double si, Uncertainty known, QuantityKind kind) {
        double below = si - known.interval95().low();
        double above = known.interval95().high() - si;
        boolean isLopsided = Math.abs(above - below) > LOPSIDED * (above + below) / 2;
        return both(printer -> {
            var printed = printer.figure(si, known.interval95().halfWidth(), kind);
            return isLopsided
                    ? new Printed(printed.value(), "", printed.unit()).text() + ", "
                            + printer.interval(known.interval95(), kind)
                    : printed.text();
        });
    }

    private String plain(double si, QuantityKind kind, int decimals) {
        return both(printer -> printer.value(si, kind, decimals).text());
    }

    private String both(Function<QuantityPrinter, String> print) {
        String first = print.apply(QuantityPrinter.prose(system));
        String other = print.apply(QuantityPrinter.prose(system.other()));
        return first.equals(other) ? first : first + " (" + other + ")";
    }
}
