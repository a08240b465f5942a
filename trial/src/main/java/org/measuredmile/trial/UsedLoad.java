package org.measuredmile.trial;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.roadload.LoadPrior;
import org.measuredmile.roadload.RoadLoad;

/// The road load that a trial works with: the day's own coast-down with its covariance, or what is usual for the tyre.
///
/// Shape: `used` names the figures that it came from, `assumed` says so where none were there. A trial that asks for it
/// declares [#ROLLING] and [#DRAG_AREA] among its uses.
public record UsedLoad(KnownLoad load, List<String> assumed, List<Figure.Used> used) {
    public static final String ROLLING = "coastdown.rolling-coefficient";
    public static final String DRAG_AREA = "coastdown.drag-area";
    /// What stands in for both.
    public static final String STAND_IN = "what is usual for the tyre's width and an upright rider";

    /// How rolling coefficient and drag area of a coast-down lean on each other where no day says it itself:
    /// what a day's pairs are moderated by, what a coast-down still to be ridden is foretold with, and figures
    /// kept before correlations were. The fit of one coast trades them by −0.94 (least squares of a + b·v² from
    /// 32 to 16 km/h: −mean(v²)/√mean(v⁴)); most of what pairs and days differ by is not the fit's.
    ///
    /// Source: house; the invented fleet's twenty coast-downs say −0.39 to −0.13.
    public static final double USUAL_LEANING = -0.2;

    /// A width as tyres are marked: 27.5 x 2.4, 700x45C, 50-622, 20 × 4.0.
    private static final Pattern INCHES = Pattern.compile("\\d+(?:[.,]\\d+)?\\s*[xX×]\\s*(\\d(?:[.,]\\d+)?)(?!\\d)");
    private static final Pattern MILLIMETRES = Pattern.compile("\\b(\\d{2,3})\\s*-\\s*\\d{3}\\b");
    private static final Pattern FRENCH = Pattern.compile("\\b\\d{3}\\s*[xX×]\\s*(\\d{2})[A-Da-d]?\\b");
    private static final double INCH_M = 0.0254;

    public UsedLoad {
        assumed = List.copyOf(assumed);
        used = List.copyOf(used);
    }

    /// The load for a trial's input.
    public static UsedLoad of(TrialInput input) {
        var rollingKey = new FigureKey(ROLLING, Variant.NONE);
        var areaKey = new FigureKey(DRAG_AREA, Variant.NONE);
        var rolling = Optional.ofNullable(input.used().get(rollingKey));
        var area = Optional.ofNullable(input.used().get(areaKey));
        if (rolling.isPresent() && area.isPresent()) {
            return measured(rolling.get(), area.get(), input.correlation(rollingKey, areaKey));
        }
        var prior =
                usual(input.day().configuration().tyres() + " " + input.bike().wheelSize());
        return new UsedLoad(prior, List.of("road load " + prior.origin() + ", no coast-down"), List.of());
    }

    /// What is usual for tyres of a marking and a rider of unknown posture.
    public static KnownLoad usual(String marking) {
        var tyre = tyreWidthM(marking);
        return LoadPrior.of(
                tyre.isPresent() ? LoadPrior.Tyre.ofWidth(tyre.getAsDouble()) : LoadPrior.Tyre.UNKNOWN,
                LoadPrior.Posture.UNKNOWN);
    }

    private static UsedLoad measured(Figure rolling, Figure area, double correlation) {
        double degrees =
                Math.min(rolling.thisDay().degreesOfFreedom(), area.thisDay().degreesOfFreedom());
        var known = new KnownLoad(
                new RoadLoad(rolling.value(), area.value()),
                rolling.thisDay().standard(),
                area.thisDay().standard(),
                correlation,
                degrees,
                false,
                "by the day's coast-down");
        return new UsedLoad(known, List.of(), List.of(rolling.asUsed(), area.asUsed()));
    }

    /// A tyre's width in metres, from its marking; empty where no marking can be read.
    static OptionalDouble tyreWidthM(String marking) {
        Matcher french = FRENCH.matcher(marking);
        if (french.find()) {
            return OptionalDouble.of(Double.parseDouble(french.group(1)) / 1000);
        }
        Matcher millimetres = MILLIMETRES.matcher(marking);
        if (millimetres.find()) {
            return OptionalDouble.of(Double.parseDouble(millimetres.group(1)) / 1000);
        }
        Matcher inches = INCHES.matcher(marking);
        return inches.find()
                ? OptionalDouble.of(Double.parseDouble(inches.group(1).replace(',', '.')) * INCH_M)
                : OptionalDouble.empty();
    }
}
