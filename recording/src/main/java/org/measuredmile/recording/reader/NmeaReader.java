package org.measuredmile.recording.reader;

import java.io.IOException;
import java.io.InputStream;
import java.util.regex.Pattern;
import org.measuredmile.recording.Format;

/// Reads sentences of satellite receivers as NMEA 0183 writes them.
///
/// Taken: RMC, GGA, GNS, GLL, VTG and ZDA of any talker, one per line, with whatever a logger put before the `$` and
/// after the checksum. A sentence whose checksum is wrong is dropped and counted. Sentences with the same time make one
/// epoch, however they are interleaved; VTG, which has no time, belongs to the last timed sentence.
/// Source: sentence layouts as published by receiver makers and by pynmeagps (BSD-3-Clause); knots are 1852/3600 m/s.
public final class NmeaReader implements RecordingReader {
    private static final Pattern SENTENCE = Pattern.compile("\\$[A-Z]{1,2}(?:RMC|GGA|GNS|GLL|VTG|ZDA|GSA|GSV|DTM),");
    private static final int LONGEST_LINE = 512;

    @Override
    public Format format() {
        return Format.NMEA;
    }

    @Override
    public boolean recognises(byte[] head) {
        return SENTENCE.matcher(TextHead.preview(head)).find();
    }

    @Override
    public Decoding read(String name, InputStream bytes) throws IOException {
        NmeaEpochs epochs = new NmeaEpochs(name);
        LineSource lines = new LineSource(TextHead.open(bytes), LONGEST_LINE);
        while (lines.next() && !epochs.isFull()) {
            String line = lines.line();
            if (!line.isBlank()) {
                readLine(line, lines.number(), epochs);
            }
        }
        return epochs.finish(lines.endsInsideLine());
    }

    private static void readLine(String line, long number, NmeaEpochs epochs) {
        int dollar = line.indexOf('$');
        if (dollar < 0) {
            epochs.unreadable(number, line);
            return;
        }
        int star = line.indexOf('*', dollar);
        String body =
                line.substring(dollar + 1, star < 0 ? line.length() : star).strip();
        if (star >= 0) {
            int stated = hex(line, star + 1);
            if (stated < 0) {
                epochs.unreadable(number, line);
                return;
            }
            if (stated != checksum(line, dollar + 1, star)) {
                epochs.wrongChecksum(number);
                return;
            }
        }
        String[] fields = body.split(",", -1);
        if (fields.length < 2 || fields[0].length() < 5 || fields[0].length() > 8) {
            epochs.unreadable(number, line);
            return;
        }
        epochs.take(fields, number, star >= 0);
    }

    private static int hex(String line, int from) {
        if (from + 2 > line.length()) {
            return -1;
        }
        int high = Character.digit(line.charAt(from), 16);
        int low = Character.digit(line.charAt(from + 1), 16);
        return high < 0 || low < 0 ? -1 : high * 16 + low;
    }

    private static int checksum(String line, int from, int to) {
        int sum = 0;
        for (int i = from; i < to; i++) {
            sum ^= line.charAt(i);
        }
        return sum;
    }
}
