package org.measuredmile.recording.reader;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.ByteArrayInputStream;
import java.io.IOException;

/// Any bytes at all, one target a reader; an ordinary test run replays the stored inputs, a fuzzing run searches.
class ReadersFuzzTest {
    @FuzzTest
    void gpxAnswers(byte[] bytes) throws IOException {
        ReaderContract.holds(new GpxReader().read("x.gpx", new ByteArrayInputStream(bytes)));
    }

    @FuzzTest
    void tcxAnswers(byte[] bytes) throws IOException {
        ReaderContract.holds(new TcxReader().read("x.tcx", new ByteArrayInputStream(bytes)));
    }

    @FuzzTest
    void nmeaAnswers(byte[] bytes) throws IOException {
        ReaderContract.holds(new NmeaReader().read("x.nmea", new ByteArrayInputStream(bytes)));
    }

    @FuzzTest
    void delimitedTextAnswers(byte[] bytes) throws IOException {
        ReaderContract.holds(new DelimitedReader().read("x.csv", new ByteArrayInputStream(bytes)));
    }

    @FuzzTest
    void captionsAnswer(byte[] bytes) throws IOException {
        ReaderContract.holds(new CaptionReader().read("x.vtt", new ByteArrayInputStream(bytes)));
    }
}
