package org.measuredmile.quantity.statistics;

import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;

/// Where seeded randomness comes from: one seed gives as many streams of draws as are asked for, each always the
/// same.
///
/// Shape: streams of different indices, and children of different names, are unrelated; how many others are
/// drawn, or in which order, changes none of them.
/// Source: the generator is the standard library's L64X128MixRandom (Steele and Vigna, OOPSLA 2021); seeds are
/// spread by the finaliser of Steele, Lea and Flood, OOPSLA 2014.
public record Seed(long value) {
    private static final String ALGORITHM = "L64X128MixRandom";
    private static final long GOLDEN_GAMMA = 0x9e3779b97f4a7c15L;

    /// The stream of draws with the given index.
    public RandomGenerator stream(long index) {
        return RandomGeneratorFactory.of(ALGORITHM).create(spread(value + GOLDEN_GAMMA * (index + 1)));
    }

    /// A seed of its own for a named purpose.
    public Seed child(String name) {
        long hash = spread(value);
        for (int i = 0; i < name.length(); i++) {
            hash = spread(hash ^ name.charAt(i)) + GOLDEN_GAMMA;
        }
        return new Seed(hash);
    }

    private static long spread(long bits) {
        long mixed = (bits ^ (bits >>> 30)) * 0xbf58476d1ce4e5b9L;
        mixed = (mixed ^ (mixed >>> 27)) * 0x94d049bb133111ebL;
        return mixed ^ (mixed >>> 31);
    }
}
