package org.measuredmile.comparison.standing;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.TreeSet;
import org.measuredmile.quantity.statistics.KeyedDraws;
import org.measuredmile.quantity.statistics.Seed;

/// The entrants as columns of numbers, and draws of their values by the block.
///
/// Shape: a block is a matrix, a bike a row of [#STRIDE] places of which [#BLOCK] are used, smaller being better
/// whichever end of the figure is. A bike's own draws follow from its id and the block's number, those of what is
/// shared from its name and the number: who else stands changes none of them.
/// Source: JCGM 101:2008, clause 7; a t variable is scaled by the any-day standard uncertainty.
final class DrawColumns {
    static final int BLOCK = 64;
    /// Rows are not set a power of two apart, so that the same place of many rows stays in the cache.
    static final int STRIDE = BLOCK + 8;

    private static final Seed SEED = new Seed(20_260_412).child("standing");

    private final int count;
    private final KeyedDraws.Scaled[] own;
    private final long[] keys;
    private final long[] sharedKeys;
    /// By shared name, then by bike: its contribution, with the sign that makes smaller better.
    private final double[][] shared;

    DrawColumns(List<Entrant> entrants, boolean lessIsBetter) {
        count = entrants.size();
        own = new KeyedDraws.Scaled[count];
        keys = new long[count];
        double direction = lessIsBetter ? 1 : -1;
        var names = new TreeSet<String>();
        entrants.forEach(entrant -> names.addAll(entrant.shared().keySet()));
        sharedKeys =
                names.stream().mapToLong(name -> key("what is shared: " + name)).toArray();
        shared = new double[names.size()][count];
        for (int i = 0; i < count; i++) {
            var entrant = entrants.get(i);
            own[i] = new KeyedDraws.Scaled(
                    direction * entrant.value(), entrant.ownUncertainty(), entrant.ownDegreesOfFreedom());
            keys[i] = key(entrant.bike());
            var contributions = entrant.shared();
            int k = 0;
            for (String name : names) {
                shared[k++][i] = direction * contributions.getOrDefault(name, 0.0);
            }
        }
    }

    private static long key(String text) {
        long hash = 0;
        for (byte one : text.getBytes(StandardCharsets.UTF_8)) {
            hash = (hash ^ one) * 0x100000001b3L + 1;
        }
        return hash << 24;
    }

    int count() {
        return count;
    }

    double[] room() {
        return new double[count * STRIDE];
    }

    /// Puts the draws of a block in their places.
    void fill(int block, double[] values) {
        for (int i = 0; i < count; i++) {
            fillOwn(i, block, values);
        }
        double[] common = new double[BLOCK];
        for (int k = 0; k < shared.length; k++) {
            var stream = new KeyedDraws(SEED, sharedKeys[k] + block);
            for (int draw = 0; draw < BLOCK; draw++) {
                common[draw] = stream.normal();
            }
            add(shared[k], common, values);
        }
    }

    private void fillOwn(int bike, int block, double[] values) {
        int from = bike * STRIDE;
        if (own[bike].scale() == 0) {
            java.util.Arrays.fill(values, from, from + BLOCK, own[bike].centre());
        } else {
            new KeyedDraws(SEED, keys[bike] + block).studentT(values, from, BLOCK, own[bike]);
        }
    }

    private void add(double[] contributions, double[] common, double[] values) {
        for (int i = 0; i < count; i++) {
            double contribution = contributions[i];
            if (contribution != 0) {
                int from = i * STRIDE;
                for (int draw = 0; draw < BLOCK; draw++) {
                    values[from + draw] += contribution * common[draw];
                }
            }
        }
    }
}
