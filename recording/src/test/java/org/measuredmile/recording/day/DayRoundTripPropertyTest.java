package org.measuredmile.recording.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.measuredmile.recording.ColumnSetting;
import org.measuredmile.recording.Place;

class DayRoundTripPropertyTest {
    private static final String[] WORDS = {
        "a",
        "plain words",
        "true",
        "12",
        "null",
        "key: value",
        "# no comment",
        "comma, and \"quotes\"",
        "-",
        "'",
        "Ufer 3 °C ½",
        "=1+1",
        "two\nlines",
        "10:27",
        "{flow}",
        "[list]",
        "*alias",
        "&anchor",
        "тест",
        "50 %",
        "a;b"
    };

    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void whatIsWrittenReadsBackAsItWas(long seed) {
        var made = new Generator(seed);
        Bike bike = made.bike();
        TestDay day = made.day(bike);

        var read = (DayRead.Read) DayReader.read(new DayFolder("day-1", DayWriter.write(day, bike), new TreeMap<>()));

        assertThat(read.day()).isEqualTo(day);
        assertThat(read.bike()).isEqualTo(bike);
        assertThat(texts(read.day(), read.bike())).isEqualTo(texts(day, bike));
    }

    @Test
    void neitherLocaleNorTimeZoneChangeAByte() {
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        var made = new Generator(7);
        Bike bike = made.bike();
        TestDay day = made.day(bike);
        var expected = DayWriter.write(day, bike);
        var expectedTexts = texts(day, bike);
        try {
            for (String tag : List.of("de-DE", "tr-TR", "ar-EG")) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Auckland"));
                assertThat(texts(day, bike)).isEqualTo(expectedTexts);
                var folder = new DayFolder("day-1", expected, new TreeMap<>());
                assertThat(((DayRead.Read) DayReader.read(folder)).day()).isEqualTo(day);
            }
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }

    private static Map<String, String> texts(TestDay day, Bike bike) {
        Map<String, String> texts = new TreeMap<>();
        DayWriter.write(day, bike).forEach((name, bytes) -> texts.put(name, new String(bytes, StandardCharsets.UTF_8)));
        return texts;
    }

    /// Days and bikes with every field now present, now absent, and texts that both formats must quote.
    private static final class Generator {
        private static final List<String> ZONES = List.of("Europe/London", "UTC", "America/New_York", "Asia/Kolkata");

        private final RandomGenerator random;

        Generator(long seed) {
            random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        }

        private boolean coin() {
            return random.nextBoolean();
        }

        private String words() {
            return coin() ? "" : WORDS[random.nextInt(WORDS.length)];
        }

        private String oneOf(String... choices) {
            return choices[random.nextInt(choices.length)];
        }

        private OptionalDouble number(double from, double to) {
            return coin() ? OptionalDouble.of(random.nextDouble(from, to)) : OptionalDouble.empty();
        }

        private Optional<LocalDate> date() {
            return coin() ? Optional.of(LocalDate.ofEpochDay(random.nextInt(25_000))) : Optional.empty();
        }

        Bike bike() {
            var price = new Bike.Price(
                    number(0, 9000),
                    words(),
                    words(),
                    date().map(Object::toString).orElse(""));
            var loan = new Bike.Loan(
                    oneOf("", "lent", "bought"),
                    words(),
                    "",
                    date().map(Object::toString).orElse(""),
                    words());
            List<SpecLine> spec = new ArrayList<>();
            for (int i = 0; i < random.nextInt(4); i++) {
                spec.add(new SpecLine(
                        "item" + i,
                        words(),
                        words(),
                        words(),
                        words(),
                        words(),
                        words(),
                        words(),
                        "plain",
                        Place.NOWHERE));
            }
            return new Bike(
                    "bike-" + random.nextInt(9),
                    words(),
                    words(),
                    coin() ? OptionalInt.of(2031) : OptionalInt.empty(),
                    words(),
                    oneOf("", "throttle", "pedal", "both"),
                    oneOf("cadence", "torque", "unknown"),
                    coin() ? OptionalInt.of(random.nextInt(9)) : OptionalInt.empty(),
                    words(),
                    price,
                    loan,
                    placed(spec));
        }

        private static List<SpecLine> placed(List<SpecLine> spec) {
            List<SpecLine> placed = new ArrayList<>();
            long line = 3;
            for (SpecLine one : spec) {
                placed.add(new SpecLine(
                        one.item(),
                        one.claimed(),
                        one.unit(),
                        one.conditions(),
                        one.source(),
                        one.date(),
                        one.seen(),
                        one.photo(),
                        one.note(),
                        Place.atLine("bike/spec.csv", line)));
                line += 1
                        + (one.claimed()
                                        + one.unit()
                                        + one.conditions()
                                        + one.source()
                                        + one.date()
                                        + one.seen()
                                        + one.photo())
                                .chars()
                                .filter(sign -> sign == '\n')
                                .count();
            }
            return placed;
        }

        private SortedMap<String, Window> windows(List<Run> runs) {
            var windows = new TreeMap<String, Window>();
            for (Run run : runs) {
                if (coin()) {
                    double fromS = coin() ? random.nextInt(3000) / 1000.0 : random.nextDouble(0, 5e3);
                    windows.put(run.id(), new Window(fromS, fromS + random.nextDouble(1e-3, 5e3)));
                }
            }
            return windows;
        }

        TestDay day(Bike bike) {
            ZoneId zone = ZoneId.of(ZONES.get(random.nextInt(ZONES.size())));
            LocalDate date = LocalDate.of(2031, 1 + random.nextInt(12), 1 + random.nextInt(28));
            Instant noon = date.atTime(12, 0).atZone(zone).toInstant();
            List<Run> runs = new ArrayList<>();
            for (int i = 0; i < random.nextInt(5); i++) {
                runs.add(run("b-" + i, noon, 3 + i));
            }
            List<Reading> readings = new ArrayList<>();
            for (int i = 0; i < random.nextInt(6); i++) {
                readings.add(reading(runs, noon, 3 + i));
            }
            List<RecordingEntry> recordings = new ArrayList<>();
            for (int i = 0; i < random.nextInt(3); i++) {
                recordings.add(new RecordingEntry(
                        "r" + i + ".csv",
                        "",
                        runs.stream().map(Run::id).toList(),
                        windows(runs),
                        random.nextDouble(-5, 5),
                        oneLine()));
            }
            return new TestDay(
                    "day-1",
                    date,
                    zone,
                    words(),
                    bike.id(),
                    configuration(),
                    coin() ? List.of(new CrewMember("M1", words())) : List.of(),
                    coin() ? List.of(new Rider("T1", number(40, 120)), new Rider("R1", number(40, 120))) : List.of(),
                    coin() ? Optional.of(new PreRideCheck("T1", "M1", "09:40")) : Optional.empty(),
                    conditions(),
                    instruments(),
                    courses(),
                    notRidden(),
                    runs,
                    readings,
                    recordings);
        }

        private String oneLine() {
            return words().replace('\n', ' ');
        }

        private Run run(String id, Instant noon, long line) {
            boolean isVoid = coin();
            Variant variant = coin() ? Variant.of("method", "tape").with("surface", "dry") : Variant.NONE;
            return new Run(
                    id,
                    "braking",
                    variant,
                    oneOf("", "T1"),
                    coin() ? Optional.of(noon.plusMillis(random.nextInt(3_600_000))) : Optional.empty(),
                    oneOf("", "c0"),
                    oneOf("", "out", "back"),
                    isVoid ? Run.State.VOID : oneOfStates(),
                    isVoid ? oneLine() : "",
                    oneLine(),
                    Place.atLine("runs.csv", line));
        }

        private Run.State oneOfStates() {
            return coin() ? Run.State.CONFIRMED : Run.State.PROPOSED;
        }

        private Reading reading(List<Run> runs, Instant noon, long line) {
            String run = runs.isEmpty() || coin()
                    ? ""
                    : runs.get(random.nextInt(runs.size())).id();
            return new Reading(
                    run,
                    "mass",
                    "24.6",
                    oneOf("", "kg"),
                    oneOf("", "i0"),
                    coin() ? Optional.of(noon.plusSeconds(random.nextInt(3600))) : Optional.empty(),
                    oneLine(),
                    oneLine(),
                    Place.atLine("readings.csv", line));
        }

        private Configuration configuration() {
            return new Configuration(
                    words(),
                    words(),
                    words(),
                    number(1e5, 5e5),
                    number(1e5, 5e5),
                    coin() ? List.of("basket", "two: bags") : List.of());
        }

        private Conditions conditions() {
            return new Conditions(
                    number(250, 320),
                    number(9e4, 1.05e5),
                    number(0, 1),
                    number(0, 12),
                    words(),
                    words(),
                    number(0, 1),
                    number(250, 320));
        }

        private List<Instrument> instruments() {
            List<Instrument> all = new ArrayList<>();
            for (Instrument.Kind kind : Instrument.Kind.values()) {
                if (coin()) {
                    Optional<Instrument.Calibration> calibration = coin()
                            ? Optional.of(new Instrument.Calibration(
                                    random.nextDouble(0.9, 1.1), random.nextDouble(1e-6, 1e-2), date()))
                            : Optional.empty();
                    all.add(new Instrument(
                                    "i" + all.size(), kind, number(1e-4, 1), calibration, number(0, 2), number(1, 960))
                            .withColumns(columns()));
                }
            }
            return all;
        }

        private List<ColumnSetting> columns() {
            List<ColumnSetting> all = new ArrayList<>();
            for (int i = 0; coin() && i < 3; i++) {
                List<String> meanings = ColumnSetting.meanings();
                String meaning = meanings.get(random.nextInt(meanings.size()));
                List<String> units = ColumnSetting.units(meaning);
                String unit = units.isEmpty() || coin() ? "" : units.get(random.nextInt(units.size()));
                String name = oneOf("spd", "speed: km/h", "Größe #1", "'x' \"y\"", "no", "1") + " " + i;
                all.add(ColumnSetting.of(name, meaning, unit).orElseThrow());
            }
            return all;
        }

        private List<Course> courses() {
            List<Course> all = new ArrayList<>();
            for (int i = 0; i < random.nextInt(3); i++) {
                Optional<Course.Surveyed> surveyed = coin()
                        ? Optional.of(new Course.Surveyed(random.nextDouble(1, 2000), random.nextDouble(0, 1)))
                        : Optional.empty();
                Optional<Course.Gate> gate = coin()
                        ? Optional.of(new Course.Gate(
                                random.nextDouble(-90, 90), random.nextDouble(-180, 180), random.nextDouble(0, 360)))
                        : Optional.empty();
                boolean isLevelled = coin();
                var course = new Course(
                        "c" + i,
                        oneOf("", "straight", "climb", "loop"),
                        surveyed,
                        Optional.empty(),
                        gate,
                        Optional.empty(),
                        isLevelled ? "c" + i + "-heights.csv" : "",
                        date(),
                        words());
                double lengthM = surveyed.map(Course.Surveyed::valueM).orElse(300.0);
                all.add(isLevelled ? course.withHeights(heights(lengthM)) : course);
            }
            return all;
        }

        private CourseHeights heights(double lengthM) {
            double middleM = random.nextDouble(0.1, 0.9) * lengthM;
            return new CourseHeights(List.of(
                    new CourseHeights.Point(0, 0, 0),
                    new CourseHeights.Point(middleM, random.nextDouble(-0.04, 0.04) * lengthM, random.nextDouble(0, 1)),
                    new CourseHeights.Point(lengthM, random.nextDouble(-0.04, 0.04) * lengthM, 0.05)));
        }

        private List<NotRidden> notRidden() {
            return coin() ? List.of(new NotRidden("noise", Variant.of("position", "ear"), words())) : List.of();
        }
    }
}
