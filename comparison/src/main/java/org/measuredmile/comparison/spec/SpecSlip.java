package org.measuredmile.comparison.spec;

import java.util.Locale;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;

/// Everything that can be noticed of a specification: one constant a kind, with its words.
///
/// Shape: [#code()] is the constant's name in lower case with hyphens and never changes meaning; `%s` stands for what
/// was found, in the message first, then in the remedy. What has level refused leaves no claim to compare.
public enum SpecSlip {
    CLAIM_NOT_READ(Finding.Level.REFUSED, "%s; no claim can be read", "%s"),
    CLAIM_RANGE_REVERSED(
            Finding.Level.REFUSED, "the range \"%s\" runs from more to less; no claim can be read", "write %s"),
    CLAIM_TWO_VALUES(
            Finding.Level.REFUSED,
            "\"%s\" says two things: %s is not %s; no claim can be read",
            "write the one that stands in the source"),
    CLAIM_UNIT_TWICE(Finding.Level.NOTE, "\"%s\" has its own unit; the column says %s and is not used", ""),
    CLAIM_ROUNDED_WORD(Finding.Level.NOTE, "\"%s\" is taken for the number itself", ""),
    CLAIM_DECIMAL_COMMA(Finding.Level.NOTE, "the decimal comma of \"%s\" is read as a decimal point", ""),
    CONDITION_NOT_READ(
            Finding.Level.WARNING,
            "\"%s\" is no key=value; it is left out of the conditions",
            "write rider-mass=75 kg level=lowest"),
    CONDITION_TWICE(
            Finding.Level.WARNING, "\"%s\" stands twice in the conditions; the first is used", "take one of them away"),

    NOT_PLAUSIBLE(Finding.Level.WARNING, "%s %s lies outside %s (%s)%s", "look at the source again"),
    UNIT_SLIP(Finding.Level.WARNING, "%s %s is claimed, %s was %s; %s", "look at the unit in the source again"),
    BATTERY_PRODUCT(
            Finding.Level.WARNING,
            "%s × %s = %s, but %s %s (%s)%s",
            "look at the plate and at the source which of the three is wrong"),
    BATTERY_CELLS(
            Finding.Level.NOTE, "%s fits %s cells in series of 3.6 V, not the %s that the voltage is rounded to", ""),
    BATTERY_DENSITY(
            Finding.Level.WARNING,
            "%s in %s is %s Wh/kg, outside %s to %s (common practice, no source)%s",
            "look at both in the source again"),
    PAYLOAD_PRODUCT(Finding.Level.WARNING, "%s; %s is claimed", "look which of the masses the maker means"),
    PAYLOAD_NONE(Finding.Level.WARNING, "%s: nothing may be carried", "look at the permitted total again"),
    POWER_REVERSED(Finding.Level.WARNING, "the nominal power, %s, is above the peak power, %s", "look which is which"),
    TYRE_NOT_READ(
            Finding.Level.NOTE,
            "\"%s\" names no width and bead seat; no circumference follows (five rims are called 26 inch)",
            ""),
    SEEN_DIFFERS(Finding.Level.WARNING, "%s: the bike says %s, the maker %s", "photograph it and ask the maker");

    private final Finding.Level level;
    private final String message;
    private final String remedy;

    SpecSlip(Finding.Level level, String message, String remedy) {
        this.level = level;
        this.message = message;
        this.remedy = remedy;
    }

    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public Finding.Level level() {
        return level;
    }

    /// The words, with `%s` where something found is put in.
    public String message() {
        return message;
    }

    /// The finding at a place: what was found fills the message first, then the remedy.
    Finding at(Place place, Object... found) {
        int inMessage = message.split("%s", -1).length - 1;
        Object[] rest = java.util.Arrays.copyOfRange(found, Math.min(inMessage, found.length), found.length);
        return new Finding(code(), level, place, fill(message, found), fill(remedy, rest));
    }

    private static String fill(String words, Object[] found) {
        return words.contains("%s") ? String.format(Locale.ROOT, words, found) : words;
    }
}
