package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.measuredmile.recording.reader.CellRow.Expected;

/// Lines without quotes are cut as the library cuts them, and what follows is handed to it whole.
class PlainRowsPropertyTest {
    private static final String[] PIECES = {
        ",",
        ",",
        ",",
        ",",
        "\n",
        "\n",
        "\r\n",
        "\r",
        "1",
        "20.5",
        "-3.25",
        "+7",
        "1e3",
        "0.1234567890123456789",
        "",
        " ",
        "\t",
        "word",
        "Größe",
        "2031-05-14T09:00:00.25Z",
        "-",
        ".",
        "5 km",
        "49.07N"
    };

    static LongStream seeds() {
        return LongStream.range(0, 400);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void rowsAreThoseOfTheLibrary(long seed) throws IOException {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        String text = text(random, 1 + random.nextInt(400));
        Expected[] expected = new Expected[random.nextInt(6)];
        Arrays.setAll(expected, i -> Expected.values()[random.nextInt(Expected.values().length)]);
        List<String> wanted = new ArrayList<>();
        library(new StringReader(text), 0, row(expected), wanted);
        assertThat(rows(text, random, expected)).isEqualTo(wanted);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void numbersAreThoseOfTheirTexts(long seed) throws IOException {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        long digits = random.nextLong() >>> random.nextInt(63);
        String written = (random.nextBoolean() ? "-" : "") + digits;
        int point = written.length() - random.nextInt(Math.min(9, written.length()));
        String number = written.substring(0, point) + "." + written.substring(point);
        CellRow row = row(Expected.NUMBER);
        assertThat(new PlainRows(new StringReader(number + ",1\n"), ',', 1000, row).next())
                .isTrue();
        double value = number.equals("-.") ? Double.NaN : Double.parseDouble(number);
        assertThat(row.number(0, '.')).isEqualTo(value);
    }

    private static List<String> rows(String text, RandomGenerator random, Expected[] expected) throws IOException {
        List<String> rows = new ArrayList<>();
        CellRow row = row(expected);
        PlainRows plain = new PlainRows(inPieces(text, random), ',', 1 << 20, row);
        while (plain.next()) {
            rows.add(shown(row, 0));
        }
        library(plain.rest(), plain.lines(), row, rows);
        return rows;
    }

    private static CellRow row(Expected... expected) {
        CellRow row = new CellRow();
        row.expect(expected, '.');
        return row;
    }

    private static void library(Reader text, long before, CellRow row, List<String> rows) {
        CsvReader<CellRow> all = CsvReader.builder()
                .commentStrategy(CommentStrategy.NONE)
                .skipEmptyLines(true)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .build(new CellRows(row), text);
        for (CellRow one : all) {
            rows.add(shown(one, before));
        }
    }

    private static String shown(CellRow row, long before) {
        StringBuilder shown = new StringBuilder().append(before + row.line());
        for (int column = 0; column < row.count(); column++) {
            shown.append(" | ").append(row.cell(column)).append(" = ").append(row.number(column, '.'));
            shown.append(row.isEmpty(column) ? " empty" : "");
        }
        return shown.toString();
    }

    private static String text(RandomGenerator random, int pieces) {
        StringBuilder text = new StringBuilder();
        int quoteAt = random.nextBoolean() ? random.nextInt(pieces) : -1;
        for (int i = 0; i < pieces; i++) {
            text.append(i == quoteAt ? ",\"in, two\",\n" : PIECES[random.nextInt(PIECES.length)]);
        }
        return text.toString();
    }

    private static Reader inPieces(String text, RandomGenerator random) {
        return new Reader() {
            private int at;

            @Override
            public int read(char[] buffer, int offset, int length) {
                if (at == text.length()) {
                    return -1;
                }
                int got = Math.min(text.length() - at, Math.min(length, 1 + random.nextInt(9)));
                text.getChars(at, at + got, buffer, offset);
                at += got;
                return got;
            }

            @Override
            public void close() {}
        };
    }
}
