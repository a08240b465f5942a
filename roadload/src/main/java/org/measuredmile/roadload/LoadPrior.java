package org.measuredmile.roadload;

/// What is known of a road load before anybody coasted: by the tyre and by how the rider sits.
///
/// Source: rolling coefficient and drag area of 557 urban cyclists, mean 0.0077 (SD 0.0036) and 0.559 m² (0.170 m²),
/// summary of a University of Bologna thesis; postures 0.40 (touring) and 0.632 m² (upright) from two published tables;
/// fat tyres from memory. The widths are house values inside those.
public final class LoadPrior {
    private LoadPrior() {}

    /// How wide the tyres are.
    public enum Tyre {
        /// To 40 mm.
        NARROW(0.0070, 0.0020),
        /// From 40 to 75 mm.
        WIDE(0.0090, 0.0025),
        /// Over 75 mm, at low pressure.
        FAT(0.0140, 0.0035),
        UNKNOWN(0.0090, 0.0030);

        private final double rolling;
        private final double sd;

        Tyre(double rolling, double sd) {
            this.rolling = rolling;
            this.sd = sd;
        }

        /// By a width in metres.
        public static Tyre ofWidth(double metres) {
            if (metres <= 0.040) {
                return NARROW;
            }
            return metres <= 0.075 ? WIDE : FAT;
        }
    }

    /// How the rider sits.
    public enum Posture {
        LEANING(0.45, 0.08),
        UPRIGHT(0.62, 0.09),
        UNKNOWN(0.60, 0.09);

        private final double dragAreaM2;
        private final double sdM2;

        Posture(double dragAreaM2, double sdM2) {
            this.dragAreaM2 = dragAreaM2;
            this.sdM2 = sdM2;
        }
    }

    /// The prior for a tyre and a posture: nothing leans on anything yet, so the two do not correlate.
    public static KnownLoad of(Tyre tyre, Posture posture) {
        return new KnownLoad(
                new RoadLoad(tyre.rolling, posture.dragAreaM2),
                tyre.sd,
                posture.sdM2,
                0,
                Double.POSITIVE_INFINITY,
                true,
                "assumed for " + words(tyre) + " and " + words(posture));
    }

    private static String words(Tyre tyre) {
        return switch (tyre) {
            case NARROW -> "narrow tyres";
            case WIDE -> "wide tyres";
            case FAT -> "fat tyres";
            case UNKNOWN -> "tyres of unknown width";
        };
    }

    private static String words(Posture posture) {
        return switch (posture) {
            case LEANING -> "a leaning rider";
            case UPRIGHT -> "an upright rider";
            case UNKNOWN -> "a rider of unknown posture";
        };
    }
}
