package org.measuredmile.recording.day;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.measuredmile.quantity.QuantityKind;

/// Writes a test day and its bike as the files of a test-day folder, always the same bytes for the same day.
///
/// Shape: UTF-8, line feeds, commas, decimal points; what [DayReader] makes of the result equals what went in, places
/// aside. Times are written as UTC instants, since a local time may come twice a year.
public final class DayWriter {
    private DayWriter() {}

    public static SortedMap<String, byte[]> write(TestDay day, Bike bike) {
        SortedMap<String, byte[]> files = new TreeMap<>();
        put(files, DayFiles.DAY, dayYaml(day));
        put(files, DayFiles.RUNS, runs(day));
        put(files, DayFiles.READINGS, readings(day));
        if (!day.recordings().isEmpty()) {
            put(files, DayFiles.RECORDINGS, recordings(day));
        }
        day.courses().forEach(course -> put(files, DayFiles.COURSES + course.id() + ".yaml", course(course)));
        day.courses().stream()
                .filter(course -> !course.heights().isEmpty())
                .forEach(course -> put(files, DayFiles.COURSES + course.profile(), heights(course.heights())));
        put(files, DayFiles.BIKE, bikeYaml(bike));
        if (!bike.spec().isEmpty()) {
            put(files, DayFiles.SPEC, spec(bike));
        }
        return files;
    }

    private static void put(SortedMap<String, byte[]> files, String name, String text) {
        files.put(name, text.getBytes(StandardCharsets.UTF_8));
    }

    private static String dayYaml(TestDay day) {
        return new YamlKeys()
                .text("date", day.date().toString())
                .text("timeZone", day.timeZone().getId())
                .text("place", day.place())
                .text("bike", day.bike())
                .keys("configuration", configuration(day.configuration()))
                .mappings("crew", day.crew().stream().map(DayWriter::member).toList())
                .mappings("riders", day.riders().stream().map(DayWriter::rider).toList())
                .keys("checks", new YamlKeys().keys("preRide", check(day.preRideCheck())))
                .keys("conditions", conditions(day.conditions()))
                .mappings(
                        "instruments",
                        day.instruments().stream().map(DayWriter::instrument).toList())
                .words("courses", day.courses().stream().map(Course::id).toList())
                .mappings(
                        "notRidden",
                        day.notRidden().stream().map(DayWriter::notRidden).toList())
                .file("test-day");
    }

    private static YamlKeys configuration(Configuration one) {
        return new YamlKeys()
                .text("firmware", one.firmware())
                .text("battery", one.battery())
                .text("tyres", one.tyres())
                .quantity("tyrePressureFront", one.tyrePressureFrontPa(), QuantityKind.PRESSURE)
                .quantity("tyrePressureRear", one.tyrePressureRearPa(), QuantityKind.PRESSURE)
                .words("accessories", one.accessories());
    }

    private static YamlKeys member(CrewMember one) {
        return new YamlKeys().text("code", one.code()).text("role", one.role());
    }

    private static YamlKeys rider(Rider one) {
        return new YamlKeys()
                .text("code", one.code())
                .quantity("massAsRidden", one.massAsRiddenKg(), QuantityKind.MASS);
    }

    private static YamlKeys check(Optional<PreRideCheck> one) {
        var keys = new YamlKeys();
        one.ifPresent(check -> keys.text("by", check.by())
                .text("secondPerson", check.secondPerson())
                .text("time", check.time()));
        return keys;
    }

    private static YamlKeys conditions(Conditions one) {
        return new YamlKeys()
                .quantity("airTemperature", one.airTemperatureK(), QuantityKind.TEMPERATURE)
                .quantity("pressure", one.pressurePa(), QuantityKind.PRESSURE)
                .quantity("relativeHumidity", one.relativeHumidity(), QuantityKind.RATIO)
                .quantity("windSpeed", one.windSpeedMps(), QuantityKind.SPEED)
                .text("windFrom", one.windFrom())
                .text("surface", one.surface())
                .quantity("stateOfCharge", one.stateOfCharge(), QuantityKind.RATIO)
                .quantity("batteryTemperature", one.batteryTemperatureK(), QuantityKind.TEMPERATURE);
    }

    private static YamlKeys instrument(Instrument one) {
        var calibration = new YamlKeys();
        one.calibration()
                .ifPresent(known -> calibration
                        .number("factor", OptionalDouble.of(known.factor()))
                        .number("standardUncertainty", OptionalDouble.of(known.standardUncertainty()))
                        .value("date", known.date()));
        return new YamlKeys()
                .text("id", one.id())
                .text("kind", one.kind().id())
                .quantity("resolution", one.resolution(), one.kind().quantity())
                .keys("calibration", calibration)
                .quantity("delay", one.delayS(), QuantityKind.TIME)
                .value("frameRate", one.frameRate().map(FrameRate::text))
                .mappings("columns", ColumnYaml.keys(one.columns()));
    }

    private static YamlKeys notRidden(NotRidden one) {
        return new YamlKeys()
                .text("trial", one.trial())
                .text("variant", one.variant().text())
                .text("reason", one.reason());
    }

    private static String course(Course course) {
        var survey = new YamlKeys().value("date", course.surveyedOn()).text("method", course.surveyedBy());
        return new YamlKeys()
                .text("id", course.id())
                .text("kind", course.kind())
                .keys("length", surveyed(course.length()))
                .keys("rise", surveyed(course.rise()))
                .keys(
                        "gates",
                        new YamlKeys().keys("start", gate(course.start())).keys("finish", gate(course.finish())))
                .text("profile", course.profile())
                .keys("surveyed", survey)
                .file("course");
    }

    private static YamlKeys surveyed(Optional<Course.Surveyed> one) {
        var keys = new YamlKeys();
        one.ifPresent(known -> keys.quantity("value", OptionalDouble.of(known.valueM()), QuantityKind.LENGTH)
                .quantity("standardUncertainty", OptionalDouble.of(known.standardUncertaintyM()), QuantityKind.LENGTH));
        return keys;
    }

    private static YamlKeys gate(Optional<Course.Gate> one) {
        var keys = new YamlKeys();
        one.ifPresent(gate -> keys.number("latitude", OptionalDouble.of(gate.latitudeDegrees()))
                .number("longitude", OptionalDouble.of(gate.longitudeDegrees()))
                .number("bearing", OptionalDouble.of(gate.bearingDegrees())));
        return keys;
    }

    private static String bikeYaml(Bike bike) {
        var price = new YamlKeys()
                .number("amount", bike.price().amount())
                .text("currency", bike.price().currency())
                .text("market", bike.price().market())
                .text("date", bike.price().date());
        return new YamlKeys()
                .text("id", bike.id())
                .text("maker", bike.maker())
                .text("model", bike.model())
                .wholeNumber("modelYear", bike.modelYear())
                .text("category", bike.category())
                .text("drive", bike.drive())
                .text("sensor", bike.sensor())
                .wholeNumber("levels", bike.levels())
                .text("wheelSize", bike.wheelSize())
                .keys("price", price)
                .text("acquired", bike.loan().acquired())
                .text("from", bike.loan().from())
                .text("received", bike.loan().received())
                .text("dueBack", bike.loan().dueBack())
                .text("disclosure", bike.loan().disclosure())
                .file("bike");
    }

    private static String spec(Bike bike) {
        CsvText lines = CsvText.of("spec", DayFiles.SPEC_COLUMNS);
        for (SpecLine one : bike.spec()) {
            lines.line(cells(one));
        }
        return lines.text();
    }

    static List<String> cells(SpecLine line) {
        return List.of(
                line.item(),
                line.claimed(),
                line.unit(),
                line.conditions(),
                line.source(),
                line.date(),
                line.seen(),
                line.photo(),
                line.note());
    }

    private static String runs(TestDay day) {
        CsvText lines = CsvText.of("runs", DayFiles.RUN_COLUMNS);
        day.runs().forEach(run -> lines.line(cells(run)));
        return lines.text();
    }

    private static String readings(TestDay day) {
        CsvText lines = CsvText.of("readings", DayFiles.READING_COLUMNS);
        day.readings().forEach(reading -> lines.line(cells(reading)));
        return lines.text();
    }

    private static String recordings(TestDay day) {
        CsvText lines = CsvText.of("recordings", DayFiles.RECORDING_COLUMNS);
        day.recordings().forEach(entry -> lines.line(cells(entry)));
        return lines.text();
    }

    private static String heights(CourseHeights heights) {
        CsvText lines = CsvText.of("profile", DayFiles.PROFILE_COLUMNS);
        heights.points()
                .forEach(point -> lines.line(List.of(
                        ExactText.number(point.distanceM()),
                        ExactText.number(point.heightM()),
                        ExactText.number(point.standardUncertaintyM()))));
        return lines.text();
    }

    /// A run's cells, in the order of [DayFiles#RUN_COLUMNS].
    static List<String> cells(Run run) {
        return List.of(
                run.id(),
                run.trial(),
                run.variant().text(),
                run.rider(),
                time(run.start()),
                run.course(),
                run.direction(),
                run.state().name().toLowerCase(Locale.ROOT),
                run.reason(),
                run.note());
    }

    /// A reading's cells, in the order of [DayFiles#READING_COLUMNS].
    static List<String> cells(Reading reading) {
        return List.of(
                reading.run(),
                reading.name(),
                reading.value(),
                reading.unit(),
                reading.instrument(),
                time(reading.time()),
                reading.by(),
                reading.note());
    }

    /// An entry's cells, in the order of [DayFiles#RECORDING_COLUMNS].
    static List<String> cells(RecordingEntry entry) {
        List<String> cells = new ArrayList<>(List.of(entry.file(), entry.instrument()));
        cells.add(entry.runs().stream()
                .map(run -> run
                        + entry.window(run).map(window -> "@" + window.text()).orElse(""))
                .collect(Collectors.joining(" ")));
        cells.add(ExactText.number(entry.clockOffsetS()));
        cells.add(entry.note());
        return cells;
    }

    private static String time(Optional<java.time.Instant> time) {
        return time.map(java.time.Instant::toString).orElse("");
    }
}
