package org.measuredmile.recording.reader;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.measuredmile.recording.ColumnSettings;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Place;

/// Reads tables of samples as loggers write them: one head or none, one row a sample, at least one column of times.
///
/// The separator, the decimal mark, lines before the head, the meaning of each column, its unit and the form of its
/// times are found out from the head and the first rows, unless they were set for the instrument; what was found is
/// said
/// in a finding, column by column. Lines without a quote sign are cut here, the rest is the library's.
/// Source: RFC 4180 for the syntax; everything else is what loggers do, common practice, no source.
public final class DelimitedReader implements RecordingReader {
    private static final Pattern MARKUP =
            Pattern.compile("^\\s*(<!doctype|<html|<\\?xml|<[a-z]+[\\s>])", Pattern.CASE_INSENSITIVE);
    private static final int HEAD_SIGNS = 65_536;
    private static final int LONGEST_CELL = 1 << 20;

    @Override
    public Format format() {
        return Format.DELIMITED;
    }

    @Override
    public boolean recognises(byte[] head) {
        String text = TextHead.preview(head).replace('\0', ' ');
        return isText(TextHead.preview(head))
                && !MARKUP.matcher(text).find()
                && TableShape.find(lines(text))
                        .or(() -> TableShape.withoutHead(lines(text)))
                        .isPresent();
    }

    @Override
    public Decoding read(String name, InputStream bytes) throws IOException {
        return read(name, bytes, ColumnSettings.NONE);
    }

    @Override
    public Decoding read(String name, InputStream bytes, ColumnSettings settings) throws IOException {
        Remarks remarks = new Remarks(name);
        Reader text = TextHead.open(bytes);
        String head = read(text, HEAD_SIGNS);
        Optional<Decoding> refusal = refusal(head, remarks);
        if (refusal.isPresent()) {
            return refusal.get();
        }
        head = head.replace('\0', ' ');
        List<String> lines = lines(head);
        Optional<TableShape> shape = TableShape.find(lines).or(() -> TableShape.withoutHead(lines));
        if (shape.isEmpty()) {
            return remarks.refuse(
                    "no-table",
                    Place.in(name),
                    "there are no rows of as many cells each, with or without a head of named columns",
                    "export the recording as a table with one row a sample, its columns parted by comma, semicolon, "
                            + "tab or bar");
        }
        int dataFrom = shape.get().lineType().isEmpty() ? shape.get().headLine() + 1 : 0;
        Reader rest = new JoinedReader(new StringReader(head.substring(offsetOfLine(head, dataFrom))), text);
        return decode(rest, dataFrom, new DelimitedTable(shape.get(), settings, remarks), remarks);
    }

    // The library means to drop leniency about what follows a closing quote and offers nothing in its place.
    @SuppressWarnings("removal")
    private static Decoding decode(Reader rest, int linesBefore, DelimitedTable table, Remarks remarks)
            throws IOException {
        CellRow plain = new CellRow();
        PlainRows lines = new PlainRows(rest, table.shape().separator(), LONGEST_CELL, plain);
        while (!table.isFull() && lines.next()) {
            table.row(plain, plain.line() + linesBefore);
        }
        long before = linesBefore + lines.lines();
        CsvReader<CellRow> rows = CsvReader.builder()
                .fieldSeparator(table.shape().separator())
                .commentStrategy(CommentStrategy.NONE)
                .skipEmptyLines(true)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .allowExtraCharsAfterClosingQuote(true)
                .allowUnclosedQuote(true)
                .maxBufferSize(LONGEST_CELL)
                .build(new CellRows(plain), lines.rest());
        try {
            for (CellRow row : rows) {
                if (table.isFull()) {
                    break;
                }
                table.row(row, row.line() + before);
            }
        } catch (CsvParseException fault) {
            remarks.count(Remark.CUT_OFF, table.lastLine() + 1, "a cell is too long or its quote is never closed");
        } catch (UncheckedIOException broken) {
            throw broken.getCause();
        }
        return table.finish();
    }

    private static Optional<Decoding> refusal(String head, Remarks remarks) {
        Place file = Place.in(remarks.source());
        if (head.isBlank()) {
            return Optional.of(remarks.refuse("empty", file, "the file is empty", "copy it from the instrument again"));
        }
        if (!isText(head)) {
            return Optional.of(remarks.refuse(
                    "not-text",
                    file,
                    "the file is not text: it holds bytes that no text has",
                    "export the recording as GPX, NMEA or a table"));
        }
        if (MARKUP.matcher(head).find()) {
            return Optional.of(remarks.refuse(
                    "markup",
                    file,
                    "the file is a page or another kind of mark-up, not a table of samples",
                    "save the recording itself, not the page that shows it"));
        }
        return Optional.empty();
    }

    /// Text has few signs that steer a terminal. Zeros are let in where a logger padded its cells with them.
    static boolean isText(String head) {
        int odd = 0;
        int zeros = 0;
        for (int i = 0; i < head.length(); i++) {
            char sign = head.charAt(i);
            if (sign == 0) {
                zeros++;
                continue;
            }
            boolean steering = sign < ' ' && sign != '\t' && sign != '\n' && sign != '\r' && sign != '\f';
            odd += steering || sign == '\uFFFD' ? 1 : 0;
        }
        return odd * 50 <= head.length() && zeros * 3 <= head.length();
    }

    private static String read(Reader text, int signs) throws IOException {
        char[] buffer = new char[signs];
        int size = 0;
        while (size < signs) {
            int got = text.read(buffer, size, signs - size);
            if (got < 0) {
                break;
            }
            size += got;
        }
        return new String(buffer, 0, size);
    }

    private static List<String> lines(String text) {
        List<String> lines = new ArrayList<>(text.lines().limit(200).toList());
        boolean cut = text.length() >= HEAD_SIGNS || (lines.size() > 2 && !text.endsWith("\n"));
        if (cut && lines.size() > 2 && lines.size() < 200) {
            // The last line may be half a line.
            lines.removeLast();
        }
        return lines;
    }

    private static int offsetOfLine(String text, int line) {
        int at = 0;
        for (int i = 0; i < line; i++) {
            int newline = text.indexOf('\n', at);
            int lineEnd = text.indexOf('\r', at);
            boolean byReturn = lineEnd >= 0 && (newline < 0 || lineEnd < newline);
            int end = byReturn ? lineEnd : newline;
            if (end < 0) {
                return text.length();
            }
            boolean pair = byReturn && end + 1 < text.length() && text.charAt(end + 1) == '\n';
            at = end + (pair ? 2 : 1);
        }
        return at;
    }
}
