package org.measuredmile.recording.day;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.measuredmile.recording.Place;

/// Reads the files of a test day that people write.
///
/// Shape: a folder in; a test day with everything that could be used, or a refusal; in both all faults of all files at
/// once, each with file, line and field. What is wrong with one value, line or file never costs another.
/// Error: none for whatever the bytes hold.
public final class DayReader {
    private final DayFolder folder;
    private final Faults faults = new Faults();

    private DayReader(DayFolder folder) {
        this.folder = folder;
    }

    public static DayRead read(DayFolder folder) {
        return new DayReader(folder).day();
    }

    private DayRead day() {
        DayYaml.Head head = head();
        Optional<Bike> bike = bike();
        List<Course> courses = courses(head);
        RunLines.Runs runs = text(DayFiles.RUNS, "runs")
                .map(text -> RunLines.read(text, head, courses, faults))
                .orElse(RunLines.Runs.NONE);
        List<Reading> readings = text(DayFiles.READINGS, "readings")
                .map(text -> ReadingLines.read(text, head, runs, faults))
                .orElse(List.of());
        var named = new RecordingLines.Named(head, runs);
        List<RecordingEntry> recordings = text(DayFiles.RECORDINGS, "recordings")
                .map(text ->
                        RecordingLines.read(text, named, folder.recordings().keySet(), faults))
                .orElse(List.of());
        folder.texts().keySet().stream()
                .filter(file -> !DayFiles.isKnown(file) && !isProfile(courses, file))
                .forEach(file -> faults.add(DayFault.FILE_UNKNOWN, Place.in(file)));
        Bike known = whichBike(head, bike);
        if (faults.areFatal() || head.date().isEmpty()) {
            return new DayRead.Unusable(folder.name(), faults.all());
        }
        var day = new TestDay(
                folder.name(),
                head.date().get(),
                head.timeZone(),
                head.place(),
                known.id(),
                head.configuration(),
                head.crew(),
                head.riders(),
                head.preRideCheck(),
                head.conditions(),
                head.instruments(),
                courses,
                head.notRidden(),
                runs.runs(),
                readings,
                recordings);
        return new DayRead.Read(day, known, faults.all());
    }

    private Optional<FileText> text(String file, String kind) {
        return Optional.ofNullable(folder.texts().get(file)).flatMap(bytes -> FileText.of(file, bytes, kind, faults));
    }

    private DayYaml.Head head() {
        if (!folder.texts().containsKey(DayFiles.DAY)) {
            faults.add(DayFault.DAY_MISSING, Place.in(folder.name()));
            return nothing();
        }
        Optional<YamlFields> fields = yaml(DayFiles.DAY, "test-day");
        if (fields.isEmpty()) {
            faults.add(DayFault.DAY_UNREADABLE, Place.in(DayFiles.DAY));
            return nothing();
        }
        return DayYaml.read(fields.get(), faults);
    }

    /// What stands in for a day.yaml that could not be read, so that the other files' faults are found all the
    /// same.
    private DayYaml.Head nothing() {
        var silent = new Faults();
        return DayYaml.read(new YamlFields(DayFiles.DAY, "", 1, silent), silent);
    }

    private Optional<YamlFields> yaml(String file, String kind) {
        return text(file, kind).flatMap(text -> YamlText.read(text, faults));
    }

    private Optional<Bike> bike() {
        List<SpecLine> spec = text(DayFiles.SPEC, "spec")
                .map(text -> BikeFiles.spec(text, faults))
                .orElse(List.of());
        return yaml(DayFiles.BIKE, "bike").flatMap(fields -> BikeFiles.read(fields, spec));
    }

    /// The bike its folder describes; the one day.yaml names, when nothing describes it.
    private Bike whichBike(DayYaml.Head head, Optional<Bike> described) {
        boolean isPath = head.bike().contains("/");
        String last = head.bike().replaceAll("/+$", "").replaceAll("^.*/", "");
        if (described.isEmpty()) {
            if (!last.isEmpty()) {
                faults.add(DayFault.BIKE_NOT_DESCRIBED, Place.in(DayFiles.DAY), Faults.quoted(last));
            }
            return Bike.known(last);
        }
        String id = described.get().id();
        if (!isPath && !head.bike().isEmpty() && !head.bike().equals(id)) {
            faults.add(DayFault.BIKE_DIFFERS, Place.in(DayFiles.BIKE), Faults.quoted(head.bike()), Faults.quoted(id));
        }
        return described.get();
    }

    /// The courses described in day.yaml, then those it names, then those that only have a file.
    private List<Course> courses(DayYaml.Head head) {
        Map<String, Course> byFile = new java.util.TreeMap<>();
        folder.texts().keySet().stream()
                .filter(DayFiles::isCourse)
                .forEach(file ->
                        yaml(file, "course").flatMap(CourseYaml::read).ifPresent(course -> byFile.put(file, course)));
        List<Course> courses = new ArrayList<>(head.courses());
        for (DayYaml.NamedCourse named : head.courseIds()) {
            Optional<Course> found = byFile.values().stream()
                    .filter(course -> course.id().equals(named.id()))
                    .findFirst();
            found.ifPresentOrElse(
                    course -> add(course, named.place(), courses),
                    () -> faults.add(
                            DayFault.COURSE_NOT_DESCRIBED,
                            named.place(),
                            Faults.quoted(named.id()),
                            Faults.quoted(named.id())));
        }
        byFile.forEach((file, course) -> {
            if (head.courseIds().stream().noneMatch(named -> named.id().equals(course.id()))) {
                add(course, Place.in(file), courses);
            }
        });
        return courses.stream()
                .map(course -> ProfileLines.read(course, described(course, byFile), folder.texts(), faults))
                .toList();
    }

    /// Where a course names its profile.
    private static Place described(Course course, Map<String, Course> byFile) {
        return byFile.entrySet().stream()
                .filter(one -> one.getValue().equals(course))
                .map(one -> new Place(one.getKey(), "profile"))
                .findFirst()
                .orElse(new Place(DayFiles.DAY, "courses." + course.id() + ".profile"));
    }

    private static boolean isProfile(List<Course> courses, String file) {
        return courses.stream()
                .anyMatch(course -> !course.profile().isEmpty() && file.equals(DayFiles.COURSES + course.profile()));
    }

    private void add(Course course, Place place, List<Course> courses) {
        Function<Course, String> id = Course::id;
        if (courses.stream().map(id).anyMatch(course.id()::equals)) {
            faults.add(DayFault.ENTRY_TWICE, place, Faults.quoted(course.id()));
        } else {
            courses.add(course);
        }
    }
}
