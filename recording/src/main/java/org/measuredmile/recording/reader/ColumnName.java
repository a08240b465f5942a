package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.ColumnMeaning;
import org.measuredmile.recording.ColumnSetting;

/// The words in a column's head, and the kind of channel they suggest.
///
/// Shape: `words` are lower-case, split at signs and where capitals begin; `written` is the unit in brackets or after
/// the last underscore, empty where there is none; `set` is what a person set it to mean, which goes before its words.
record ColumnName(String text, List<String> words, String written, Optional<ColumnSetting> set) {
    private static final Set<String> NOT_THE_VALUE_ITSELF = Set.of(
            "accuracy",
            "uncertainty",
            "limit",
            "error",
            "variance",
            "std",
            "count",
            "magnetic",
            "true",
            "stopping",
            "target",
            "confidence",
            "timestamp",
            "status",
            "mode",
            "quality",
            "age",
            "view");
    private static final Set<String> CLOCK_WORDS =
            Set.of("time", "timestamp", "date", "datetime", "utc", "millis", "epoch", "clock", "elapsed");

    static ColumnName of(String head) {
        String text = head.strip();
        int open = Math.max(text.lastIndexOf('('), text.lastIndexOf('['));
        int close = Math.max(text.lastIndexOf(')'), text.lastIndexOf(']'));
        boolean bracketed = open > 0 && close == text.length() - 1;
        String inside = bracketed ? text.substring(open + 1, close).strip() : "";
        String name = bracketed ? text.substring(0, open).strip() : text;
        String written = inside;
        if (written.isEmpty()) {
            int cut = Math.max(name.lastIndexOf('_'), name.lastIndexOf(' '));
            String tail = cut > 0 ? name.substring(cut + 1) : "";
            written = HeadUnit.isKnown(tail) && !tail.equalsIgnoreCase("N") && !tail.equalsIgnoreCase("C") ? tail : "";
            name = written.isEmpty() ? name : name.substring(0, cut);
        }
        return new ColumnName(text, words(name), written, Optional.empty());
    }

    /// The same column as a person set it.
    ColumnName as(ColumnSetting setting) {
        return new ColumnName(text, words, setting.unit().isEmpty() ? written : setting.unit(), Optional.of(setting));
    }

    private static List<String> words(String name) {
        List<String> words = new ArrayList<>();
        StringBuilder word = new StringBuilder();
        for (int i = 0; i < name.length(); i++) {
            char sign = name.charAt(i);
            boolean begins = Character.isUpperCase(sign) && i > 0 && Character.isLowerCase(name.charAt(i - 1));
            if (begins || !Character.isLetterOrDigit(sign)) {
                flush(word, words);
            }
            if (Character.isLetterOrDigit(sign)) {
                word.append(sign);
            }
        }
        flush(word, words);
        return List.copyOf(words);
    }

    private static void flush(StringBuilder word, List<String> words) {
        if (!word.isEmpty()) {
            words.add(word.toString().toLowerCase(Locale.ROOT));
            word.setLength(0);
        }
    }

    boolean has(String... any) {
        for (String word : any) {
            if (words.contains(word)) {
                return true;
            }
        }
        return false;
    }

    private String joined() {
        return String.join("", words);
    }

    /// Whether it may hold a time: a word for it, and no word for what a time is not.
    boolean mayBeClock() {
        if (set.isPresent()) {
            return set.get().role() == ColumnMeaning.Role.CLOCK;
        }
        boolean says = words.stream().anyMatch(CLOCK_WORDS::contains) || joined().startsWith("timein");
        return (says || joined().equals("ms") || joined().equals("seconds")) && !has("start", "end", "zone", "lap");
    }

    boolean isDate() {
        return has("date") && !has("time") && (set.isEmpty() || mayBeClock());
    }

    /// The kind that the words suggest; OTHER where they suggest none.
    ChannelKind kind() {
        if (set.isPresent()) {
            return set.get().kind();
        }
        if (words.stream().anyMatch(NOT_THE_VALUE_ITSELF::contains) && !has("used")) {
            return ChannelKind.OTHER;
        }
        ChannelKind position = position();
        if (position != ChannelKind.OTHER) {
            return position;
        }
        ChannelKind motion = motion();
        return motion != ChannelKind.OTHER ? motion : surroundings();
    }

    private ChannelKind position() {
        if (has("latitude", "lat")) {
            return ChannelKind.LATITUDE;
        }
        if (has("longitude", "lon", "lng", "long")) {
            return ChannelKind.LONGITUDE;
        }
        if (has("altitude", "alt", "height", "elevation", "ele")) {
            return ChannelKind.ALTITUDE;
        }
        if (has("course", "heading", "cog") && axis() == ' ') {
            return ChannelKind.COURSE;
        }
        if (joined().equals("nsat") || joined().equals("sat") || has("satellites", "sats")) {
            return ChannelKind.SATELLITES;
        }
        return joined().equals("hdop") ? ChannelKind.DILUTION_OF_PRECISION : ChannelKind.OTHER;
    }

    private ChannelKind motion() {
        if (has("wind")) {
            return has("speed") || joined().contains("speed") ? ChannelKind.WIND_SPEED : ChannelKind.OTHER;
        }
        if (has("speed", "velocity", "gpsspeed")) {
            return has("wheel") ? ChannelKind.WHEEL_SPEED : ChannelKind.SPEED;
        }
        if (has("distance", "dist", "odometer")) {
            return ChannelKind.DISTANCE;
        }
        if (joined().matches("a(cc|ccel)?[xyz]") || (has("acceleration", "accelerometer", "acc") && axis() != ' ')) {
            return onAxis(ChannelKind.ACCELERATION_X, ChannelKind.ACCELERATION_Y, ChannelKind.ACCELERATION_Z);
        }
        boolean turns = has("gyroscope", "gyro", "rotation") || joined().matches("g[xyz]|(roll|pitch|yaw)rate");
        if (turns && axis() != ' ') {
            return onAxis(ChannelKind.TURN_RATE_X, ChannelKind.TURN_RATE_Y, ChannelKind.TURN_RATE_Z);
        }
        if (has("cadence", "cad")) {
            return ChannelKind.CADENCE;
        }
        if (has("power", "watts")) {
            return ChannelKind.POWER;
        }
        if (has("force")) {
            return ChannelKind.FORCE;
        }
        return has("lever") ? ChannelKind.LEVER : ChannelKind.OTHER;
    }

    private ChannelKind surroundings() {
        if (joined().equals("heartrate") || joined().equals("hr")) {
            return ChannelKind.HEART_RATE;
        }
        if (has("temperature", "temp", "atemp")) {
            return ChannelKind.AIR_TEMPERATURE;
        }
        if (has("pressure", "barometer")) {
            return ChannelKind.PRESSURE;
        }
        if (has("humidity")) {
            return ChannelKind.HUMIDITY;
        }
        if (joined().equals("soc") || joined().equals("stateofcharge")) {
            return ChannelKind.STATE_OF_CHARGE;
        }
        if (has("voltage", "volts")) {
            return ChannelKind.VOLTAGE;
        }
        return has("current", "amps") ? ChannelKind.CURRENT : ChannelKind.OTHER;
    }

    private ChannelKind onAxis(ChannelKind x, ChannelKind y, ChannelKind z) {
        return switch (axis()) {
            case 'x' -> x;
            case 'y' -> y;
            default -> z;
        };
    }

    /// x, y or z (roll, pitch, yaw count as such), or a blank.
    private char axis() {
        if (words.isEmpty()) {
            return ' ';
        }
        String last = words.getLast();
        if (joined().matches("(roll|pitch|yaw)rate")) {
            return joined().startsWith("roll") ? 'x' : joined().startsWith("pitch") ? 'y' : 'z';
        }
        char end = last.charAt(last.length() - 1);
        boolean alone = last.length() == 1 || joined().matches("(a|acc|accel|g|gyro)[xyz]");
        return alone && end >= 'x' && end <= 'z' ? end : ' ';
    }
}
