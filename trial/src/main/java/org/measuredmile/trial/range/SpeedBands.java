package org.measuredmile.trial.range;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.recording.motion.Journey;

/// What a metre costs at each speed: energy and way of all pieces of a ride whose speed lay in a band.
///
/// Pieces of ten seconds are sorted by their mean speed; the cost is the quotient of the sums and its scatter that of
/// the pieces.
/// Unit: bands from `fromKmh` to `toKmh`; joules per metre.
/// Source: ratio estimation (Cochran, Sampling Techniques, 3rd ed. 1977, chapter 6, from memory).
record SpeedBands(List<Band> bands) {
    /// One band with enough way in it.
    record Band(int fromKmh, int toKmh, double joulesPerMetre, double standardUncertainty, double wayM, int pieces) {
        String value() {
            return fromKmh + "-" + toKmh + "-kmh";
        }
    }

    static final int LOWEST_KMH = 5;
    static final int HIGHEST_KMH = 45;
    static final int WIDTH_KMH = 5;
    private static final double PIECE_S = 10;
    private static final double LEAST_WAY_M = 500;
    private static final int FEWEST_PIECES = 8;

    SpeedBands {
        bands = List.copyOf(bands);
    }

    private record Piece(double metres, double joules, double seconds) {
        double kmh() {
            return 3.6 * metres / seconds;
        }
    }

    static SpeedBands of(Journey journey, BatteryLog log) {
        var pieces = pieces(journey, log);
        var bands = new ArrayList<Band>();
        for (int from = LOWEST_KMH; from < HIGHEST_KMH; from += WIDTH_KMH) {
            int low = from;
            var within = pieces.stream()
                    .filter(piece -> piece.kmh() >= low && piece.kmh() < low + WIDTH_KMH)
                    .toList();
            double metres = within.stream().mapToDouble(Piece::metres).sum();
            if (metres >= LEAST_WAY_M && within.size() >= FEWEST_PIECES) {
                bands.add(band(low, metres, within));
            }
        }
        return new SpeedBands(bands);
    }

    private static List<Piece> pieces(Journey journey, BatteryLog log) {
        var speed = journey.speed();
        var pieces = new ArrayList<Piece>();
        int from = 0;
        double metres = 0;
        for (int i = 1; i < speed.size(); i++) {
            double stepS = speed.timeS(i) - speed.timeS(i - 1);
            if (stepS > PIECE_S) {
                from = i;
                metres = 0;
                continue;
            }
            metres += stepS * (speed.value(i) + speed.value(i - 1)) / 2;
            double seconds = speed.timeS(i) - speed.timeS(from);
            if (seconds >= PIECE_S) {
                var given = log.between(speed.timeS(from), speed.timeS(i));
                if (given.seconds() > 0.95 * seconds && metres > 0) {
                    pieces.add(new Piece(metres, given.joules(), seconds));
                }
                from = i;
                metres = 0;
            }
        }
        return pieces;
    }

    private static Band band(int fromKmh, double metres, List<Piece> pieces) {
        double joules = pieces.stream().mapToDouble(Piece::joules).sum();
        double cost = joules / metres;
        double squares = 0;
        for (var piece : pieces) {
            double off = piece.joules() - cost * piece.metres();
            squares += off * off;
        }
        double n = pieces.size();
        double sd = Math.sqrt(squares * n / (n - 1)) / metres;
        return new Band(fromKmh, fromKmh + WIDTH_KMH, cost, sd, metres, pieces.size());
    }
}
