package org.measuredmile.demo;

/// The crew's control bike: on many a morning it is stopped five times by tape, by whoever rides that day,
/// so that what the day and the tester do to a stopping distance can be seen.
///
/// Shape: every other morning of the fleet; on one of them its rear disc had oil on it.
final class ControlRides {
    static final String BIKE = "tullimar-tideline";
    private static final int STOPS = 5;
    private static final int EVERY = 2;
    private static final int OILED = 19;
    private static final double OILED_SHARE = 0.76;

    private ControlRides() {}

    /// Whether the control bike comes along on the morning of the fleet's bike of this number.
    static boolean isOn(int index, Fleet.Member guest) {
        return index % EVERY == 1 && !guest.bike().id().equals(BIKE);
    }

    /// The control bike as it was on that morning.
    static Fleet.Member bike(int index) {
        var member = Fleet.members().stream()
                .filter(one -> one.bike().id().equals(BIKE))
                .findFirst()
                .orElseThrow();
        var truth = member.truth();
        return index == OILED
                ? new Fleet.Member(member.bike(), truth.decelerating(OILED_SHARE * truth.decelerationMps2()))
                : member;
    }

    static void play(DayScript day) {
        BrakingScene.play(day, Twist.TYPED_ONLY, STOPS);
    }
}
