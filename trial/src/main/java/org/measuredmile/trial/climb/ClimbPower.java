package org.measuredmile.trial.climb;

import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.Course.Surveyed;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.trial.RoadSetting;

/// The mean power at the wheel up a hill, by energy.
///
/// Formula: P = (m·g·h + ½·m_eff·(v₂² − v₁²) + m·g·C_rr·L + ½·ρ·C_dA·(v̄ + w)·|v̄ + w|·L) / T with v̄ = L/T.
/// Unit: watts; SI.
/// Valid: for a speed that is nearly even: the air's part takes the mean speed for the speed.
record ClimbPower(
        RoadSetting road,
        KnownLoad load,
        HillWind wind,
        Surveyed length,
        Surveyed rise,
        double timeS,
        double entryMps,
        double exitMps) {

    /// The parts of the power, in watts.
    record Parts(double lifting, double speedingUp, double rolling, double air) {
        double sum() {
            return lifting + speedingUp + rolling + air;
        }
    }

    Parts parts() {
        Setting setting = road.setting();
        double weightN = setting.massKg() * setting.gravityMps2();
        double square = exitMps * exitMps - entryMps * entryMps;
        return new Parts(
                weightN * rise.valueM() / timeS,
                setting.effectiveKg() * square / 2 / timeS,
                weightN * load.mean().rollingCoefficient() * meanMps(),
                load.mean().dragN(setting, meanMps(), wind.headMps()) * meanMps());
    }

    double meanMps() {
        return length.valueM() / timeS;
    }

    double watts() {
        return parts().sum();
    }

    /// What a second more takes off: everything in the time but the air's square.
    double perSecond() {
        return -(watts() + parts().air() * airBySpeed()) / timeS;
    }

    /// By which power of the mean speed the air's force goes: 2 where it is calm.
    private double airBySpeed() {
        double airMps = meanMps() + wind.headMps();
        return airMps == 0 ? 0 : 2 * meanMps() / airMps;
    }

    double perEntry() {
        return -road.setting().effectiveKg() * entryMps / timeS;
    }

    double perExit() {
        return road.setting().effectiveKg() * exitMps / timeS;
    }

    Contribution byMass() {
        var parts = parts();
        double perKg = (parts.lifting() + parts.rolling()) / road.setting().massKg()
                + parts.speedingUp() / road.setting().effectiveKg();
        return Contribution.typeB("mass of bike and rider", Math.abs(perKg) * road.massSdKg());
    }

    Contribution byWheels() {
        double perKg = parts().speedingUp() / road.setting().effectiveKg();
        return Contribution.typeB("turning of the wheels (assumed)", Math.abs(perKg) * road.turningSdKg());
    }

    Contribution byRise() {
        return Contribution.typeB("surveyed rise", parts().lifting() / rise.valueM() * rise.standardUncertaintyM());
    }

    Contribution byLength() {
        double perMetre = (parts().rolling() + (1 + airBySpeed()) * parts().air()) / length.valueM();
        return Contribution.typeB("surveyed length", Math.abs(perMetre) * length.standardUncertaintyM());
    }

    Contribution byRoadLoad() {
        var setting = road.setting();
        double perRolling = setting.massKg() * setting.gravityMps2() * meanMps();
        double airMps = meanMps() + wind.headMps();
        double perArea = setting.airKgPerM3() * airMps * Math.abs(airMps) / 2 * meanMps();
        return new Contribution(
                load.assumed() ? "road load (assumed)" : "road load by the coast-down",
                Contribution.Evaluation.B,
                load.sd(perRolling, perArea),
                load.degreesOfFreedom(),
                "");
    }

    Contribution byAir() {
        return Contribution.typeB(
                "air density",
                Math.abs(parts().air()) * road.airSdKgPerM3() / road.setting().airKgPerM3());
    }

    Contribution byWind() {
        var setting = road.setting();
        double perMps =
                setting.airKgPerM3() * load.mean().dragAreaM2() * Math.abs(meanMps() + wind.headMps()) * meanMps();
        return Contribution.typeB("wind along the hill", perMps * wind.standardUncertainty());
    }
}
