package org.measuredmile.demo;

import java.util.List;
import java.util.Locale;

/// The makers of the invented fleet and what they say of their bikes. None of them exists.
public final class Makers {
    /// Every maker's name.
    public static final List<String> NAMES = List.of(
            "Ostrelle",
            "Zornby",
            "Vessenby",
            "Tullimar",
            "Skelloway",
            "Quorvane",
            "Plimble",
            "Pellowick",
            "Mirefoot",
            "Haverdusk",
            "Corrowan",
            "Hobbarn");

    private Makers() {}

    /// The id of a bike: maker and model in lower case with a hyphen.
    static String id(String maker, String model) {
        return (maker + "-" + model).toLowerCase(Locale.ROOT).replace(' ', '-');
    }

    /// Says how a bike came to the crew.
    static String disclosure(String maker) {
        return "lent by " + maker + " (invented maker) for four weeks; nothing was paid in either direction";
    }
}
