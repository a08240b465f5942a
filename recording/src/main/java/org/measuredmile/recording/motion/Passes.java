package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Course;
import org.measuredmile.recording.motion.GateCrossings.Crossing;
import org.measuredmile.recording.motion.Pass.Direction;

/// Every pass of a surveyed course in a recording, both ways, and every attempt that is none with the reason.
///
/// Shape: out is from the start gate along its bearing to the finish gate along its own; back is the reverse. A course
/// without a finish gate is a loop: each crossing of its gate in one sense ends a pass and begins the next.
/// Source: timing by gates and by speed over the surveyed length as in [PassTiming].
public record Passes(List<Pass> passes, List<Partial> partial) {
    public Passes {
        passes = List.copyOf(passes);
        partial = List.copyOf(partial);
    }

    /// A ride through one gate that did not become a pass.
    ///
    /// Unit: seconds on the recording's time base.
    public record Partial(Direction direction, double fromS, double toS, String reason) {}

    /// Passes of a course whose line is straight between its gates.
    public static Passes of(Recording recording, Course course) {
        return of(recording, course, CourseLine.straight(course));
    }

    /// Passes of a course whose line is known.
    public static Passes of(Recording recording, Course course, Optional<CourseLine> line) {
        var fixes = Fixes.of(recording).map(Fixes::withoutRepeats);
        if (fixes.isEmpty() || course.start().isEmpty()) {
            return new Passes(List.of(), List.of());
        }
        return new Search(PassTiming.of(recording, fixes.get(), course, line)).run(fixes.get(), course);
    }

    private record GateEvent(boolean atStart, Crossing crossing) {}

    /// Goes through the crossings of both gates in the order of time.
    private static final class Search {
        private final PassTiming timing;
        private final List<Pass> passes = new ArrayList<>();
        private final List<Partial> partial = new ArrayList<>();
        private Optional<GateEvent> open = Optional.empty();

        Search(PassTiming timing) {
            this.timing = timing;
        }

        Passes run(Fixes fixes, Course course) {
            boolean isLoop = course.finish().isEmpty();
            var events = new ArrayList<GateEvent>();
            GateCrossings.of(fixes, course.start().orElseThrow())
                    .forEach(crossing -> events.add(new GateEvent(true, crossing)));
            course.finish()
                    .ifPresent(gate -> GateCrossings.of(fixes, gate)
                            .forEach(crossing -> events.add(new GateEvent(false, crossing))));
            events.sort(Comparator.comparingDouble(event -> event.crossing().timeS()));
            for (var event : events) {
                if (isLoop) {
                    round(event);
                } else {
                    take(event);
                }
            }
            double endS = fixes.timesS()[fixes.size() - 1];
            open.filter(_ -> !isLoop).ifPresent(begun -> refuse(begun, endS, "the other gate was not reached"));
            return new Passes(passes, partial);
        }

        private void round(GateEvent event) {
            open.filter(begun -> begun.crossing().sense() == event.crossing().sense())
                    .ifPresent(begun -> close(begun, event));
            open = Optional.of(event);
        }

        private void take(GateEvent event) {
            boolean begins = event.atStart() == (event.crossing().sense() > 0);
            if (begins) {
                open.ifPresent(begun -> refuse(
                        begun, event.crossing().timeS(), "a gate was entered again before the other was reached"));
                open = Optional.of(event);
            } else if (open.isPresent() && open.get().atStart() != event.atStart()) {
                close(open.get(), event);
                open = Optional.empty();
            } else if (open.isPresent()) {
                refuse(open.get(), event.crossing().timeS(), "turned back through the same gate");
                open = Optional.empty();
            } else {
                double at = event.crossing().timeS();
                partial.add(new Partial(
                        event.atStart() ? Direction.BACK : Direction.OUT, at, at, "the first gate was not crossed"));
            }
        }

        private static Direction direction(GateEvent begun) {
            return begun.crossing().sense() > 0 ? Direction.OUT : Direction.BACK;
        }

        private void refuse(GateEvent begun, double toS, String reason) {
            partial.add(new Partial(direction(begun), begun.crossing().timeS(), toS, reason));
        }

        private void close(GateEvent begun, GateEvent ended) {
            String fault = begun.crossing().counts()
                    ? ended.crossing().fault()
                    : begun.crossing().fault();
            if (!fault.isEmpty()) {
                refuse(begun, ended.crossing().timeS(), fault);
                return;
            }
            switch (timing.timed(direction(begun), begun.crossing(), ended.crossing())) {
                case PassTiming.Timed.Whole(var pass) -> passes.add(pass);
                case PassTiming.Timed.Refused(var reason) ->
                    refuse(begun, ended.crossing().timeS(), reason);
            }
        }
    }
}
