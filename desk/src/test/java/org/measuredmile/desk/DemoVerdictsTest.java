package org.measuredmile.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.archive.Act;
import org.measuredmile.archive.Archive;
import org.measuredmile.comparison.verdict.ClaimVerdict;
import org.measuredmile.comparison.verdict.Verdict;
import org.measuredmile.demo.BikeTruth;
import org.measuredmile.demo.DemoFleet;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.day.DayFolder;

/// What the invented bikes really weigh, against what is said of their makers' claims. The truth is the demo's own,
/// never the reduction's.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DemoVerdictsTest {
    /// A scale of the crew, a day and three weighings leave so much open at most, in kilograms.
    private static final double OPEN_KG = 0.25;

    private final Archive archive;

    DemoVerdictsTest(@TempDir Path folder) {
        archive = Archive.open(folder, Clock.systemUTC());
    }

    @BeforeAll
    void fill() {
        for (DayFolder day : DemoFleet.days(DemoFleet.SEED)) {
            // Nothing of the weigh-in hangs on the recordings, which take most of the time.
            archive.importDay(new DayFolder(day.name(), day.texts(), new TreeMap<>()), new Act("demo", "test"));
        }
    }

    @AfterAll
    void close() {
        archive.close();
    }

    private ClaimVerdict mass(BikeTruth truth) {
        return BikeClaims.of(archive, truth.bike()).orElseThrow().verdicts().stream()
                .filter(one -> one.item().id().equals("mass"))
                .findFirst()
                .orElseThrow();
    }

    private double claimedKg(BikeTruth truth) {
        return archive.describe(truth.bike())
                .orElseThrow()
                .claimed("mass", QuantityKind.MASS)
                .orElseThrow();
    }

    @Test
    void everyBikeWhoseTruthDemandsAVerdictOnItsMassGetsIt() {
        int meet = 0;
        int fallShort = 0;
        for (var truth : DemoFleet.truth()) {
            double over = truth.massKg() - claimedKg(truth);
            if (over < -OPEN_KG) {
                meet++;
                assertThat(mass(truth).verdict()).as(truth.bike()).isEqualTo(Verdict.MEETS);
            } else if (over > OPEN_KG) {
                fallShort++;
                assertThat(mass(truth).verdict()).as(truth.bike()).isEqualTo(Verdict.FALLS_SHORT);
            }
        }
        assertThat(meet).isPositive();
        assertThat(fallShort).isPositive();
    }

    @Test
    void aBikeWhoseClaimIsItsTrueMassCannotBeTold() {
        var close = DemoFleet.truth().stream()
                .filter(truth -> Math.abs(truth.massKg() - claimedKg(truth)) < 0.04)
                .toList();

        assertThat(close).isNotEmpty();
        assertThat(close).allSatisfy(truth -> assertThat(mass(truth).verdict()).isEqualTo(Verdict.CANNOT_TELL));
    }

    @Test
    void aBikeWhoseClaimIsItsTrueMassWithoutBatteryAgreesWithThat() {
        var without = DemoFleet.truth().stream()
                .filter(truth -> Math.abs(truth.massKg() - truth.batteryKg() - claimedKg(truth)) < 0.04)
                .toList();

        assertThat(without).isNotEmpty();
        assertThat(without).allSatisfy(truth -> {
            assertThat(mass(truth).verdict()).isEqualTo(Verdict.FALLS_SHORT);
            assertThat(mass(truth).agreesWith())
                    .extracting(one -> one.result().figure().key().text())
                    .contains("weighin.mass battery=out");
        });
    }
}
