package org.measuredmile.recording.reader;

import com.ctc.wstx.api.WstxInputProperties;
import com.ctc.wstx.exc.WstxEOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.regex.Pattern;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.codehaus.stax2.XMLInputFactory2;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Place;

/// Reads GPX 1.0 and 1.1, with or without their namespace, in one pass.
///
/// Taken: track points with position, elevation, time, and by local name, under any prefix at any depth: speed, course,
/// heart rate, cadence, power, air temperature, satellites, horizontal dilution. Not taken: routes and waypoints, which
/// are places and not samples; they are counted.
/// Off: document type definitions, external entities, entity expansion.
/// Source: GPX 1.1 schema documentation (topografix.com/GPX/1/1): speeds in m/s (GPX 1.0), times in UTC.
public final class GpxReader implements RecordingReader {
    private static final Pattern ROOT = Pattern.compile("<(?:[A-Za-z_][\\w.-]*:)?gpx[\\s>/]");
    private static final int LONGEST_TEXT = 1024;
    private static final int DEEPEST = 64;

    @Override
    public Format format() {
        return Format.GPX;
    }

    @Override
    public boolean recognises(byte[] head) {
        return ROOT.matcher(TextHead.preview(head)).find();
    }

    @Override
    public Decoding read(String name, InputStream bytes) throws IOException {
        GpxContent content = new GpxContent(name);
        try {
            XMLStreamReader xml = factory().createXMLStreamReader(bytes);
            walk(xml, content);
        } catch (WstxEOFException end) {
            return content.cutOff(end.getLocation().getLineNumber(), "the XML is not closed");
        } catch (XMLStreamException fault) {
            rethrowBrokenStream(fault);
            return content.illFormed(line(fault), firstLine(fault.getMessage()));
        } catch (IllegalArgumentException | IllegalStateException fault) {
            // Woodstox answers some impossible encodings and signs with these.
            return content.illFormed(0, firstLine(fault.getMessage()));
        }
        return content.finish();
    }

    private static void rethrowBrokenStream(XMLStreamException fault) throws IOException {
        if (fault.getNestedException() instanceof IOException broken
                && !(broken instanceof java.io.CharConversionException)
                && !(broken instanceof java.io.EOFException)
                && !(broken instanceof java.nio.charset.CharacterCodingException)
                && !(broken instanceof java.io.UnsupportedEncodingException)) {
            throw broken;
        }
    }

    private static long line(XMLStreamException fault) {
        return fault.getLocation() == null ? 0 : fault.getLocation().getLineNumber();
    }

    private static String firstLine(@org.jspecify.annotations.Nullable String message) {
        String text = message == null ? "" : message;
        int end = text.indexOf('\n');
        return Remarks.shortened(end < 0 ? text : text.substring(0, end), 120);
    }

    private static XMLInputFactory factory() {
        XMLInputFactory factory = new com.ctc.wstx.stax.WstxInputFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, true);
        factory.setProperty(XMLInputFactory.IS_COALESCING, false);
        // Files in the wild use prefixes that they never declare; names are matched without prefix anyway.
        factory.setProperty(XMLInputFactory.IS_NAMESPACE_AWARE, false);
        // A lazy parser meets faults where text is fetched, and throws what no interface promises.
        factory.setProperty(XMLInputFactory2.P_LAZY_PARSING, false);
        factory.setProperty(WstxInputProperties.P_MAX_ELEMENT_DEPTH, DEEPEST);
        factory.setProperty(WstxInputProperties.P_MAX_ATTRIBUTES_PER_ELEMENT, 64);
        factory.setProperty(WstxInputProperties.P_MAX_ATTRIBUTE_SIZE, 65_536);
        factory.setProperty(WstxInputProperties.P_MAX_ENTITY_DEPTH, 1);
        factory.setProperty(WstxInputProperties.P_MAX_ENTITY_COUNT, 16);
        return factory;
    }

    private static void walk(XMLStreamReader xml, GpxContent content) throws XMLStreamException {
        StringBuilder text = new StringBuilder();
        while (xml.hasNext()) {
            switch (xml.next()) {
                case XMLStreamConstants.START_ELEMENT -> {
                    text.setLength(0);
                    content.open(localName(xml), xml);
                }
                case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA -> {
                    if (content.wantsText() && text.length() < LONGEST_TEXT) {
                        text.append(xml.getTextCharacters(), xml.getTextStart(), xml.getTextLength());
                    }
                }
                case XMLStreamConstants.END_ELEMENT -> {
                    content.close(localName(xml), text.toString().strip());
                    text.setLength(0);
                }
                default -> {
                    // Comments, processing instructions and an ignored document type carry no
                    // sample.
                }
            }
            if (content.isFull()) {
                return;
            }
        }
    }

    private static String localName(XMLStreamReader xml) {
        String name = xml.getLocalName();
        return name.substring(name.indexOf(':') + 1);
    }

    /// Where the root is not GPX at all.
    static Decoding notGpx(Remarks remarks, String root) {
        return remarks.refuse(
                "not-gpx",
                Place.in(remarks.source()),
                "the root element is <" + Remarks.quoted(root) + ">, not <gpx>",
                "export the recording as GPX");
    }
}
