package org.measuredmile.comparison.spec;

import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/// The size of a tyre, from the words on its sidewall: `57-584`, `27.5 x 2.25`, `20 x 4.0`, `700 x 35C`, `26 x 1 3/8`.
///
/// Unit: millimetres, as ISO 5775 names them: width and the diameter of the bead seat.
/// Source: physics of gearing and wheels: ISO 5775-1, read in summary (height of the section is its width, 2.5 mm more
/// below 28 mm); diameters by trade name as the crew's reference lists them, those of 12, 14, 18 and 24 in from memory.
public record TyreSize(double widthMm, double beadSeatMm) {
    private static final double INCH_MM = 25.4;
    private static final double NARROW_MM = 28;
    private static final double HIGHER_WHEN_NARROW_MM = 2.5;
    private static final Pattern ISO = Pattern.compile("(\\d{2,3}(?:\\.\\d)?) ?[-–] ?(\\d{3})(?!\\d)");
    private static final Pattern INCH = Pattern.compile(
            "(?<![\\d.])(\\d{2}(?:\\.5)?) ?(?:in|\")? ?[x×X] ?(\\d)(?:\\.(\\d{1,3}))?(?: (\\d)/(\\d))?");
    private static final Pattern FRENCH =
            Pattern.compile("(?<!\\d)(700|650) ?([ABCabc])? ?[x×X] ?(\\d{2}) ?([ABCabc])?");
    /// Bead seats of sizes whose width is a decimal of an inch.
    private static final Map<String, Integer> BY_DECIMAL = Map.of(
            "12", 203, "14", 254, "16", 305, "18", 355, "20", 406, "24", 507, "26", 559, "27.5", 584, "28", 622, "29",
            622);
    /// Bead seats of sizes whose width is a fraction: other rims under the same inches.
    private static final Map<String, Integer> BY_FRACTION = Map.of(
            "16 3/8", 349, "20 3/8", 451, "24 3/8", 540, "26 3/8", 590, "27 1/4", 630, "28 1/2", 635, "28 3/8", 622);

    public TyreSize {
        if (!(widthMm > 0 && beadSeatMm > 0)) {
            throw new IllegalArgumentException("no tyre is " + widthMm + " mm on " + beadSeatMm + " mm");
        }
    }

    /// The size that words name; empty where they name none, or inches alone, which five rims of 26 in share.
    public static Optional<TyreSize> read(String words) {
        Matcher iso = ISO.matcher(words);
        if (iso.find()) {
            return plausible(Double.parseDouble(iso.group(1)), Integer.parseInt(iso.group(2)));
        }
        Matcher french = FRENCH.matcher(words);
        if (french.find()) {
            boolean isSmaller = french.group(1).equals("650");
            String letter = Optional.ofNullable(french.group(2))
                    .or(() -> Optional.ofNullable(french.group(4)))
                    .orElse(isSmaller ? "" : "C")
                    .toUpperCase(java.util.Locale.ROOT);
            Optional<Integer> bead = Optional.ofNullable(
                    Map.of("700C", 622, "650B", 584, "650C", 571, "650A", 590).get(french.group(1) + letter));
            return bead.flatMap(one -> plausible(Double.parseDouble(french.group(3)), one));
        }
        Matcher inch = INCH.matcher(words);
        return inch.find() ? inches(inch) : Optional.empty();
    }

    private static Optional<TyreSize> inches(Matcher inch) {
        double whole = Double.parseDouble(inch.group(2));
        if (inch.group(5) != null) {
            double bottom = Double.parseDouble(inch.group(5));
            double width = bottom == 0 ? 0 : whole + Double.parseDouble(inch.group(4)) / bottom;
            String name = inch.group(1) + " " + inch.group(4) + "/" + inch.group(5);
            return Optional.ofNullable(BY_FRACTION.get(name)).flatMap(bead -> plausible(width * INCH_MM, bead));
        }
        double width = Double.parseDouble(
                inch.group(2) + "." + Optional.ofNullable(inch.group(3)).orElse("0"));
        return Optional.ofNullable(BY_DECIMAL.get(inch.group(1))).flatMap(bead -> plausible(width * INCH_MM, bead));
    }

    private static Optional<TyreSize> plausible(double widthMm, int beadSeatMm) {
        boolean canBe = widthMm >= 18 && widthMm <= 140 && beadSeatMm >= 137 && beadSeatMm <= 650;
        return canBe ? Optional.of(new TyreSize(widthMm, beadSeatMm)) : Optional.empty();
    }

    /// The estimated way of one turn: π times the outer diameter. A rollout under load is 1 to 3 % shorter.
    ///
    /// Unit: metres.
    public double circumferenceM() {
        double heightMm = widthMm < NARROW_MM ? widthMm + HIGHER_WHEN_NARROW_MM : widthMm;
        return StrictMath.PI * (beadSeatMm + 2 * heightMm) / 1000;
    }

    /// In the form of ISO 5775: `57-584`.
    public String words() {
        return Math.round(widthMm) + "-" + Math.round(beadSeatMm);
    }
}
