package org.measuredmile.desk.web.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.PreRideCheck;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;

/// A test day with one part exchanged.
final class DayParts {
    private DayParts() {}

    static TestDay checked(TestDay day, PreRideCheck check) {
        return with(day, Optional.of(check), Lists.of(day));
    }

    static TestDay with(TestDay day, List<Run> runs, List<Reading> readings) {
        return with(day, day.preRideCheck(), new Lists(day.instruments(), runs, readings, day.recordings()));
    }

    static TestDay withRecordings(TestDay day, List<RecordingEntry> recordings) {
        return with(day, day.preRideCheck(), new Lists(day.instruments(), day.runs(), day.readings(), recordings));
    }

    static TestDay withInstruments(TestDay day, List<Instrument> instruments) {
        return with(day, day.preRideCheck(), new Lists(instruments, day.runs(), day.readings(), day.recordings()));
    }

    private record Lists(
            List<Instrument> instruments, List<Run> runs, List<Reading> readings, List<RecordingEntry> recordings) {
        static Lists of(TestDay day) {
            return new Lists(day.instruments(), day.runs(), day.readings(), day.recordings());
        }
    }

    private static TestDay with(TestDay day, Optional<PreRideCheck> check, Lists lists) {
        return new TestDay(
                day.id(),
                day.date(),
                day.timeZone(),
                day.place(),
                day.bike(),
                day.configuration(),
                day.crew(),
                day.riders(),
                check,
                day.conditions(),
                lists.instruments(),
                day.courses(),
                day.notRidden(),
                lists.runs(),
                lists.readings(),
                lists.recordings());
    }

    /// A list with the one element that fits exchanged, or one more at its end when none does.
    static <T> List<T> exchanged(List<T> all, java.util.function.Predicate<T> fits, UnaryOperator<T> change, T fresh) {
        var list = new ArrayList<T>(all);
        for (int i = 0; i < list.size(); i++) {
            if (fits.test(list.get(i))) {
                list.set(i, change.apply(list.get(i)));
                return list;
            }
        }
        list.add(fresh);
        return list;
    }
}
