package org.measuredmile.comparison.legal;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.measuredmile.comparison.TestedBike.Result;
import org.measuredmile.comparison.legal.ClassOutcome.Also;
import org.measuredmile.comparison.legal.ClassOutcome.Basis;
import org.measuredmile.comparison.legal.ClassOutcome.RuleOutcome;
import org.measuredmile.comparison.legal.Evidence.PowerSaid;
import org.measuredmile.comparison.legal.LegalRule.Operator;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.trial.Figure;

/// Holds what is known of one bike beside one rule.
final class RuleCheck {
    /// Slower than this a motor helps in starting or walking: EN 15194, 4.2.12, has 6 km/h.
    private static final LegalLimit WALKING = new LegalLimit(new BigDecimal(6), Unit.KILOMETRE_PER_HOUR);

    private final Evidence evidence;
    private final LegalRule rule;

    private RuleCheck(Evidence evidence, LegalRule rule) {
        this.evidence = evidence;
        this.rule = rule;
    }

    static RuleOutcome of(Evidence evidence, LegalRule rule) {
        var check = new RuleCheck(evidence, rule);
        return switch (rule.measured()) {
            case CUT_OFF -> check.cutOff();
            case MOTOR_ALONE -> check.motorAlone();
            case THROTTLE -> check.throttle();
            case MOTOR_POWER -> check.power();
            case PEDALS -> check.pedals();
            case RUN_ON -> check.runOn();
        };
    }

    /// The limit that holds for this bike: its own mark's multiple where the rule hangs on that and a lower
    /// mark was read.
    private LegalLimit limit() {
        var limit = rule.limit().orElseThrow();
        var marked = evidence.markedSpeedMps();
        if (rule.ofMarked().isEmpty() || marked.isEmpty()) {
            return limit;
        }
        var scaled = Beside.in(limit.unit(), marked.getAsDouble())
                .multiply(rule.ofMarked().get());
        return scaled.compareTo(limit.value()) < 0 ? new LegalLimit(scaled.stripTrailingZeros(), limit.unit()) : limit;
    }

    private RuleOutcome cutOff() {
        var all = new ArrayList<RuleOutcome>();
        evidence.cutOffs().forEach(result -> all.add(figure("noted at", result)));
        boolean isCutOffKnown = !all.isEmpty();
        for (var result : evidence.motorAlone()) {
            // What the motor drives on its own it has not stopped driving: a bound from below, and no more than that.
            var bound = figure("held by the motor alone, which has then not ended, at", result);
            if (bound.outcome() == LegalOutcome.OUTSIDE) {
                all.add(bound);
            }
        }
        if (isCutOffKnown || !all.isEmpty()) {
            return worst(all);
        }
        return nothing(
                evidence.hasPedalledSpeed()
                        ? "no cut-off was noted, and a speed that was pedalled is none"
                        : "no cut-off was noted",
                "ride past the end of the help and note where its push fades, in the assist speeds");
    }

    private RuleOutcome motorAlone() {
        if (!evidence.isDriveKnown()) {
            return nothing(
                    "whether a throttle is fitted is not written down", "write the drive into the bike's folder");
        }
        if (!evidence.hasThrottle()) {
            return RuleOutcome.plain(
                    rule,
                    LegalOutcome.WITHIN,
                    Basis.DESCRIBED,
                    "no throttle is fitted, as the bike is described: nothing drives it without pedalling");
        }
        var results = evidence.motorAlone();
        if (results.isEmpty()) {
            return nothing(
                    "its speed by the motor alone was not measured",
                    "ride the throttle alone, both ways, on the level");
        }
        return worst(results.stream().map(this::motorAlone).toList());
    }

    private RuleOutcome motorAlone(Result result) {
        if (rule.riderKg().isEmpty()) {
            return figure("", result);
        }
        var corrected = MotorAlone.of(evidence, result, rule.riderKg().getAsDouble());
        var figure = result.figure();
        var asRidden = Beside.of(figure.value(), figure.anyDay().interval95(), limit().unit());
        if (corrected.isEmpty()) {
            return figure("as ridden, not brought to the text's rider,", result);
        }
        String what = corrected.get().isGoverned()
                ? "held by its controller, which rider and air do not move,"
                : "brought to the text's rider, level road and still air of 1.225 kg/m³,";
        var judged = judged(what, corrected.get().speedMps(), corrected.get().known(), Optional.of(result));
        return new RuleOutcome(
                rule,
                judged.outcome(),
                judged.basis(),
                judged.said() + "; as ridden " + asRidden.text(),
                judged.beside(),
                judged.limit(),
                List.of(new Also("as ridden", asRidden)),
                judged.result(),
                judged.wouldDecide());
    }

    private RuleOutcome throttle() {
        if (!evidence.isDriveKnown()) {
            return nothing(
                    "whether a throttle is fitted is not written down", "write the drive into the bike's folder");
        }
        boolean isFitted = evidence.hasThrottle();
        if (!isFitted) {
            boolean isWanted = rule.operator() == Operator.FITTED;
            return RuleOutcome.plain(
                    rule,
                    isWanted ? LegalOutcome.OUTSIDE : LegalOutcome.WITHIN,
                    Basis.DESCRIBED,
                    "no throttle is fitted, as the bike is described");
        }
        return switch (rule.operator()) {
            case FITTED ->
                RuleOutcome.plain(rule, LegalOutcome.WITHIN, Basis.DESCRIBED, "a throttle is fitted, as described");
            case ABSENT -> driven();
            default ->
                RuleOutcome.plain(
                        rule,
                        LegalOutcome.CANNOT_TELL,
                        Basis.DESCRIBED,
                        "a throttle is fitted, and the text does not say what that does to the class");
        };
    }

    /// A bike that the motor drives alone, faster than help in starting does.
    private RuleOutcome driven() {
        for (var result : evidence.motorAlone()) {
            var figure = result.figure();
            var beside = Beside.of(figure.value(), figure.anyDay().interval95(), WALKING.unit());
            if (WALKING.judge(Operator.AT_MOST, beside) == LegalOutcome.OUTSIDE) {
                return new RuleOutcome(
                        rule,
                        LegalOutcome.OUTSIDE,
                        Basis.MEASURED,
                        "the motor alone drove it at " + beside.text() + ", more than help in starting",
                        Optional.of(beside),
                        Optional.empty(),
                        List.of(),
                        Optional.of(result),
                        List.of());
            }
        }
        var open = RuleOutcome.plain(
                rule,
                LegalOutcome.CANNOT_TELL,
                Basis.DESCRIBED,
                "a throttle is fitted; what it does beyond help in starting was not measured");
        return deciding(open, List.of("ride the throttle alone, both ways, on the level"));
    }

    private RuleOutcome power() {
        var said = evidence.power();
        if (said.isEmpty()) {
            return nothing(
                    "no motor power is claimed or marked, and no road ride measures it",
                    "read the mark on the motor, or ask the maker for its continuous rated power");
        }
        var limit = limit();
        var beside = Beside.exactly(said.get().si(), limit.unit());
        var outcome = limit.judge(rule.operator(), beside);
        String who = said.get().isMarked() ? "marked" : "claimed";
        String words = who + " " + beside.text() + ", never measured on the road";
        boolean isOpen = outcome == LegalOutcome.OUTSIDE && !said.get().isRated();
        var settled = new RuleOutcome(
                rule,
                isOpen ? LegalOutcome.CANNOT_TELL : outcome,
                Basis.CLAIMED,
                isOpen ? words + "; " + unrated(said.get()) : words,
                Optional.of(beside),
                Optional.of(limit),
                List.of(),
                Optional.empty(),
                List.of());
        return isOpen
                ? deciding(settled, List.of("the continuous rated power, from the motor's mark or the maker"))
                : settled;
    }

    private static String unrated(PowerSaid said) {
        return said.isPeak()
                ? "that is a peak, and the text counts rated power"
                : "whether that is the rated power or a peak is not said, and the text counts rated power";
    }

    private RuleOutcome pedals() {
        if (evidence.hasPedals()) {
            return RuleOutcome.plain(rule, LegalOutcome.WITHIN, Basis.DESCRIBED, "pedals are fitted, as described");
        }
        return nothing("whether pedals drive it is not written down", "write the drive into the bike's folder");
    }

    private RuleOutcome runOn() {
        var results = evidence.runOns();
        if (results.isEmpty()) {
            return nothing("how far it drives on was not measured", "ride the engagement trial");
        }
        return worst(results.stream().map(result -> figure("", result)).toList());
    }

    private RuleOutcome figure(String what, Result result) {
        return judged(what, result.figure().value(), result.figure().anyDay(), Optional.of(result));
    }

    private RuleOutcome judged(String what, double si, Uncertainty known, Optional<Result> result) {
        var limit = limit();
        var beside = Beside.of(si, LegalLimit.guarded(si, known, LegalLimit.SURE), limit.unit());
        var outcome = limit.judge(rule.operator(), beside);
        boolean isBetween = outcome == LegalOutcome.OUTSIDE
                && rule.otherwise()
                        .filter(wider -> wider.judge(rule.operator(), beside) != LegalOutcome.OUTSIDE)
                        .isPresent();
        var settled = isBetween ? LegalOutcome.CANNOT_TELL : outcome;
        String said = (what + " " + beside.text()).strip() + ": "
                + (isBetween ? "within the wider limit only" : RuleWords.closeness(settled, limit, beside));
        return new RuleOutcome(
                rule,
                settled,
                Basis.MEASURED,
                said,
                Optional.of(beside),
                Optional.of(limit),
                List.of(),
                result,
                settled == LegalOutcome.CANNOT_TELL && !isBetween
                        ? wouldDecide(limit, beside, result.map(Result::figure))
                        : List.of());
    }

    /// What of the figure's own ways to narrow it would take the limit out of the interval; where none would, how
    /// narrow it has to be.
    private List<String> wouldDecide(LegalLimit limit, Beside beside, Optional<Figure> figure) {
        var would = figure.stream()
                .flatMap(one -> one.narrows().stream())
                .filter(one -> narrowed(limit, beside, one.intervalThen().halfWidth()) != LegalOutcome.CANNOT_TELL)
                .map(Figure.Narrowing::what)
                .toList();
        if (!would.isEmpty()) {
            return would;
        }
        var gap = limit.excess(beside).abs();
        return List.of(
                gap.signum() == 0
                        ? "nothing: the value is the limit itself"
                        : "an interval of less than ± " + gap.toPlainString() + " "
                                + limit.unit().symbol() + ", which no one step that is listed reaches");
    }

    private LegalOutcome narrowed(LegalLimit limit, Beside beside, double halfWidthSi) {
        var half = Beside.in(limit.unit(), halfWidthSi).setScale(2, RoundingMode.CEILING);
        var then = new Beside(
                beside.value(), beside.value().subtract(half), beside.value().add(half), beside.unit());
        return limit.judge(rule.operator(), then);
    }

    /// Of several results under one rule the one that goes furthest: any that is outside, else any that is open.
    private static RuleOutcome worst(List<RuleOutcome> all) {
        var order = List.of(LegalOutcome.OUTSIDE, LegalOutcome.CANNOT_TELL, LegalOutcome.WITHIN);
        return all.stream()
                .min(Comparator.comparingInt((RuleOutcome one) -> order.indexOf(one.outcome()))
                        .thenComparing(
                                one -> one.beside().map(Beside::value).orElse(BigDecimal.ZERO),
                                Comparator.reverseOrder()))
                .orElseThrow();
    }

    private RuleOutcome nothing(String said, String would) {
        return deciding(RuleOutcome.plain(rule, LegalOutcome.NOT_MEASURED, Basis.NOTHING, said), List.of(would));
    }

    private static RuleOutcome deciding(RuleOutcome one, List<String> would) {
        return new RuleOutcome(
                one.rule(),
                one.outcome(),
                one.basis(),
                one.said(),
                one.beside(),
                one.limit(),
                one.also(),
                one.result(),
                would);
    }
}
