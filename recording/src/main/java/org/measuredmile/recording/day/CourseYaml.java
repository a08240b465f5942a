package org.measuredmile.recording.day;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;

/// Reads a course from its keys, in a file of its own or inside day.yaml.
final class CourseYaml {
    static final List<String> KINDS = List.of("straight", "climb", "loop");
    private static final double FULL_TURN_DEGREES = 360;

    private CourseYaml() {}

    static Optional<Course> read(YamlFields fields) {
        Optional<String> id = fields.needed("id", "the course's id, as promenade");
        String kind = fields.word("kind", KINDS).orElse("");
        Optional<Course.Surveyed> length = surveyed(fields.mapping("length"));
        Optional<Course.Surveyed> rise = surveyed(fields.mapping("rise"));
        YamlFields gates = fields.mapping("gates");
        Optional<Course.Gate> start = gate(gates.mapping("start"));
        Optional<Course.Gate> finish = gate(gates.mapping("finish"));
        gates.nameUnknown();
        String profile = fields.text("profile");
        YamlFields survey = fields.mapping("surveyed");
        var on = survey.date("date");
        String by = survey.text("method");
        survey.nameUnknown();
        fields.nameUnknown();
        return id.map(one -> new Course(one, kind, length, rise, start, finish, profile, on, by));
    }

    private static Optional<Course.Surveyed> surveyed(YamlFields fields) {
        if (fields.isEmpty()) {
            return Optional.empty();
        }
        OptionalDouble valueM = fields.quantity("value", QuantityKind.LENGTH);
        OptionalDouble uncertaintyM = fields.within(
                "standardUncertainty",
                fields.quantity("standardUncertainty", QuantityKind.LENGTH),
                new Interval(0, Double.MAX_VALUE),
                "0 or more");
        fields.nameUnknown();
        if (valueM.isEmpty() || uncertaintyM.isEmpty()) {
            fields.needed("value", "the length, as 402.3 m");
            fields.needed("standardUncertainty", "its standard uncertainty, as 0.1 m");
            return Optional.empty();
        }
        return Optional.of(new Course.Surveyed(valueM.getAsDouble(), uncertaintyM.getAsDouble()));
    }

    private static Optional<Course.Gate> gate(YamlFields fields) {
        if (fields.isEmpty()) {
            return Optional.empty();
        }
        OptionalDouble latitude = degrees(fields, "latitude", new Interval(-90, 90));
        OptionalDouble longitude = degrees(fields, "longitude", new Interval(-180, 180));
        OptionalDouble bearing = degrees(fields, "bearing", new Interval(0, FULL_TURN_DEGREES));
        fields.nameUnknown();
        if (latitude.isEmpty() || longitude.isEmpty() || bearing.isEmpty()) {
            fields.needed("latitude", "degrees north of WGS-84");
            fields.needed("longitude", "degrees east of WGS-84");
            fields.needed("bearing", "degrees from true north");
            return Optional.empty();
        }
        return Optional.of(new Course.Gate(latitude.getAsDouble(), longitude.getAsDouble(), bearing.getAsDouble()));
    }

    /// Degrees stay degrees, so the number is read as one without a unit.
    private static OptionalDouble degrees(YamlFields fields, String key, Interval range) {
        String text = fields.text(key);
        String number =
                text.endsWith("°") ? text.substring(0, text.length() - 1).strip() : text;
        OptionalDouble value = FieldText.plainNumber(number, fields.at(key));
        return fields.within(
                key, value, range, "from " + (long) range.low() + " to " + (long) range.high() + " degrees");
    }
}
