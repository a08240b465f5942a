package org.measuredmile.benchmark;

import com.ctc.wstx.stax.WstxInputFactory;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.codehaus.stax2.XMLInputFactory2;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.Decoding.Decoded;
import org.measuredmile.recording.reader.Readers;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/// Reading of a three-hour ride at 1 Hz in each format, and what the kept library alone needs for its syntax.
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(java.util.concurrent.TimeUnit.MILLISECONDS)
public class Decoding {
    static final double HOURS = 3;

    @Param({"gpx", "tcx", "fit", "nmea", "csv", "vtt"})
    public String ending = "gpx";

    private byte[] file = {};

    @Setup
    public void write() {
        file = RideFiles.of(ending, Rides.epochs(HOURS, 1));
    }

    /// Everything that happens between a file's bytes and its recording.
    @Benchmark
    public long decode(Cpu cpu) throws Exception {
        return cpu.of(() -> samples(ending, file));
    }

    /// The same bytes through the tokenizer and nothing else: Woodstox's events, fastcsv's records.
    @Benchmark
    public long scan(Cpu cpu) throws Exception {
        return cpu.of(() -> scanned(ending, file));
    }

    static long samples(String ending, byte[] file) throws IOException {
        return switch (Readers.decode("ride." + ending, new ByteArrayInputStream(file))) {
            case Decoded(Recording recording) -> recording.samples();
            case org.measuredmile.recording.reader.Decoding.Refused refused ->
                throw new IllegalStateException(refused.findings().toString());
        };
    }

    static long scanned(String ending, byte[] file) throws IOException, XMLStreamException {
        return ending.equals("csv") ? records(file) : elements(file);
    }

    private static long elements(byte[] file) throws XMLStreamException {
        XMLInputFactory factory = new WstxInputFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_NAMESPACE_AWARE, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, false);
        factory.setProperty(XMLInputFactory2.P_LAZY_PARSING, false);
        XMLStreamReader events = factory.createXMLStreamReader(new ByteArrayInputStream(file));
        long elements = 0;
        while (events.hasNext()) {
            elements += events.next() == XMLStreamConstants.START_ELEMENT ? 1 : 0;
        }
        return elements;
    }

    private static long records(byte[] file) throws IOException {
        Reader text = new InputStreamReader(new ByteArrayInputStream(file), StandardCharsets.UTF_8);
        long fields = 0;
        try (CsvReader<CsvRecord> records = CsvReader.builder().ofCsvRecord(text)) {
            for (CsvRecord row : records) {
                fields += row.getFieldCount();
            }
        }
        return fields;
    }
}
