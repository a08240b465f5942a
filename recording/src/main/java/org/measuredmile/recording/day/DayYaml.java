package org.measuredmile.recording.day;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Place;

/// Reads day.yaml: who, where, when, which bike, what it was like, with what.
final class DayYaml {
    private static final Interval SHARE = new Interval(0, 1);
    private static final Interval POSITIVE = new Interval(Double.MIN_VALUE, Double.MAX_VALUE);

    private final YamlFields fields;
    private final Faults faults;

    private DayYaml(YamlFields fields, Faults faults) {
        this.fields = fields;
        this.faults = faults;
    }

    /// What day.yaml says, with absence where a day without it is not usable.
    ///
    /// Shape: `courseIds` are the courses it names and does not describe.
    record Head(
            Optional<LocalDate> date,
            ZoneId timeZone,
            String place,
            String bike,
            Configuration configuration,
            List<CrewMember> crew,
            List<Rider> riders,
            Optional<PreRideCheck> preRideCheck,
            Conditions conditions,
            List<Instrument> instruments,
            List<Course> courses,
            List<NamedCourse> courseIds,
            List<NotRidden> notRidden) {}

    /// A course by its id alone, and where it is named.
    record NamedCourse(String id, Place place) {}

    static Head read(YamlFields fields, Faults faults) {
        return new DayYaml(fields, faults).head();
    }

    private Head head() {
        Optional<LocalDate> date = fields.date("date");
        if (date.isEmpty()) {
            faults.add(DayFault.DATE_MISSING, fields.place("date"));
        }
        String bike = fields.text("bike");
        if (bike.isEmpty()) {
            faults.add(DayFault.BIKE_MISSING, fields.place("bike"));
        }
        List<NamedCourse> courseIds = new ArrayList<>();
        var head = new Head(
                date,
                zone(),
                fields.text("place"),
                bike,
                configuration(fields.mapping("configuration")),
                crew(),
                riders(),
                preRideCheck(),
                conditions(fields.mapping("conditions")),
                instruments(),
                courses(courseIds),
                courseIds,
                notRidden());
        fields.nameUnknown();
        return head;
    }

    private ZoneId zone() {
        String text = fields.text("timeZone");
        if (text.isEmpty()) {
            faults.add(DayFault.ZONE_MISSING, fields.place("timeZone"));
            return ZoneOffset.UTC;
        }
        try {
            return ZoneId.of(text);
        } catch (DateTimeException _) {
            faults.add(DayFault.ZONE_UNKNOWN, fields.place("timeZone"), Faults.quoted(text));
            return ZoneOffset.UTC;
        }
    }

    private static Configuration configuration(YamlFields from) {
        var configuration = new Configuration(
                from.text("firmware"),
                from.text("battery"),
                from.text("tyres"),
                from.within(
                        "tyrePressureFront",
                        from.quantity("tyrePressureFront", QuantityKind.PRESSURE),
                        POSITIVE,
                        "above 0"),
                from.within(
                        "tyrePressureRear",
                        from.quantity("tyrePressureRear", QuantityKind.PRESSURE),
                        POSITIVE,
                        "above 0"),
                from.list("accessories").stream()
                        .map(YamlFields.Entry::word)
                        .filter(word -> !word.isEmpty())
                        .toList());
        from.nameUnknown();
        return configuration;
    }

    private List<CrewMember> crew() {
        List<CrewMember> crew = new ArrayList<>();
        for (YamlFields one : fields.mappings("crew")) {
            String role = one.text("role");
            one.needed("code", "the member's code, as T1").ifPresent(code -> crew.add(new CrewMember(code, role)));
            one.nameUnknown();
        }
        return crew;
    }

    private List<Rider> riders() {
        List<Rider> riders = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (YamlFields one : fields.mappings("riders")) {
            OptionalDouble massKg =
                    one.within("massAsRidden", one.quantity("massAsRidden", QuantityKind.MASS), POSITIVE, "above 0");
            one.needed("code", "the rider's code, as R1")
                    .filter(code -> isFirst(code, one.place("code"), seen))
                    .ifPresent(code -> riders.add(new Rider(code, massKg)));
            one.nameUnknown();
        }
        return riders;
    }

    private boolean isFirst(String id, Place place, Set<String> seen) {
        if (seen.add(id)) {
            return true;
        }
        faults.add(DayFault.ENTRY_TWICE, place, Faults.quoted(id));
        return false;
    }

    private Optional<PreRideCheck> preRideCheck() {
        YamlFields checks = fields.mapping("checks");
        YamlFields check = checks.mapping("preRide");
        checks.nameUnknown();
        if (check.isEmpty()) {
            return Optional.empty();
        }
        var done = new PreRideCheck(check.text("by"), check.text("secondPerson"), check.text("time"));
        if (!done.by().isEmpty() && done.by().equals(done.secondPerson())) {
            faults.add(DayFault.CHECK_BY_ONE, check.place("secondPerson"), Faults.quoted(done.by()));
        }
        check.nameUnknown();
        return Optional.of(done);
    }

    private static Conditions conditions(YamlFields from) {
        var conditions = new Conditions(
                from.within(
                        "airTemperature",
                        from.quantity("airTemperature", QuantityKind.TEMPERATURE),
                        POSITIVE,
                        "above absolute zero"),
                from.within("pressure", from.quantity("pressure", QuantityKind.PRESSURE), POSITIVE, "above 0"),
                from.within(
                        "relativeHumidity",
                        from.number("relativeHumidity", QuantityKind.RATIO, Unit.ONE),
                        SHARE,
                        "from 0 % to 100 %"),
                from.within(
                        "windSpeed",
                        from.quantity("windSpeed", QuantityKind.SPEED),
                        new Interval(0, Double.MAX_VALUE),
                        "0 or more"),
                from.text("windFrom"),
                from.text("surface"),
                from.within(
                        "stateOfCharge",
                        from.number("stateOfCharge", QuantityKind.RATIO, Unit.ONE),
                        SHARE,
                        "from 0 % to 100 %"),
                from.within(
                        "batteryTemperature",
                        from.quantity("batteryTemperature", QuantityKind.TEMPERATURE),
                        POSITIVE,
                        "above absolute zero"));
        from.nameUnknown();
        return conditions;
    }

    private List<Instrument> instruments() {
        List<Instrument> instruments = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (YamlFields one : fields.mappings("instruments")) {
            Optional<String> id = one.needed("id", "the instrument's id, as tape-1");
            Optional<Instrument.Kind> kind = kind(one);
            if (id.isPresent() && kind.isPresent() && isFirst(id.get(), one.place("id"), seen)) {
                instruments.add(new Instrument(
                        id.get(),
                        kind.get(),
                        one.within(
                                "resolution",
                                one.quantity("resolution", kind.get().quantity()),
                                POSITIVE,
                                "above 0"),
                        calibration(one.mapping("calibration")),
                        one.number("delay", QuantityKind.TIME, Unit.SECOND),
                        frameRate(one),
                        ColumnYaml.read(one, faults)));
                one.nameUnknown();
            }
        }
        return instruments;
    }

    private Optional<FrameRate> frameRate(YamlFields from) {
        String text = from.text("frameRate");
        Optional<FrameRate> rate = FrameRate.parse(text);
        if (rate.isEmpty() && !text.isEmpty()) {
            faults.add(DayFault.NOT_A_FRAME_RATE, from.place("frameRate"), Faults.quoted(text));
        }
        if (rate.isPresent() && rate.get() instanceof FrameRate.Variable) {
            faults.add(DayFault.FRAME_RATE_VARIABLE, from.place("frameRate"));
        }
        return rate;
    }

    private static Optional<Instrument.Kind> kind(YamlFields from) {
        List<String> ids =
                Stream.of(Instrument.Kind.values()).map(Instrument.Kind::id).toList();
        if (from.needed("kind", "one of " + String.join(", ", ids)).isEmpty()) {
            return Optional.empty();
        }
        return from.word("kind", ids)
                .flatMap(id -> Stream.of(Instrument.Kind.values())
                        .filter(kind -> kind.id().equals(id))
                        .findFirst());
    }

    private static Optional<Instrument.Calibration> calibration(YamlFields from) {
        if (from.isEmpty()) {
            return Optional.empty();
        }
        OptionalDouble factor =
                from.within("factor", from.number("factor", QuantityKind.RATIO, Unit.ONE), POSITIVE, "above 0");
        OptionalDouble uncertainty = from.within(
                "standardUncertainty",
                from.number("standardUncertainty", QuantityKind.RATIO, Unit.ONE),
                new Interval(0, Double.MAX_VALUE),
                "0 or more");
        Optional<LocalDate> date = from.date("date");
        from.nameUnknown();
        if (factor.isEmpty() || uncertainty.isEmpty()) {
            from.needed("factor", "the factor, as 1.0012");
            from.needed("standardUncertainty", "the factor's standard uncertainty, as 0.0005");
            return Optional.empty();
        }
        return Optional.of(new Instrument.Calibration(factor.getAsDouble(), uncertainty.getAsDouble(), date));
    }

    private List<Course> courses(List<NamedCourse> byId) {
        List<Course> courses = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (YamlFields.Entry entry : fields.list("courses")) {
            if (entry.fields().isEmpty()) {
                byId.add(new NamedCourse(entry.word(), entry.place()));
            } else {
                CourseYaml.read(entry.fields().get())
                        .filter(course -> isFirst(course.id(), entry.place(), seen))
                        .ifPresent(courses::add);
            }
        }
        return courses;
    }

    private List<NotRidden> notRidden() {
        List<NotRidden> notRidden = new ArrayList<>();
        for (YamlFields one : fields.mappings("notRidden")) {
            Optional<String> trial = one.needed("trial", "the trial's id, as braking");
            Optional<Variant> variant = FieldText.variant(one.text("variant"), one.at("variant"));
            String reason = one.text("reason");
            one.nameUnknown();
            if (trial.isPresent() && variant.isPresent()) {
                if (reason.isEmpty()) {
                    faults.add(DayFault.NOT_RIDDEN_WITHOUT_REASON, one.place("reason"));
                }
                notRidden.add(new NotRidden(trial.get(), variant.get(), reason));
            }
        }
        return notRidden;
    }
}
