package org.measuredmile.recording.reader;

import com.ctc.wstx.api.WstxInputProperties;
import com.ctc.wstx.exc.WstxEOFException;
import com.ctc.wstx.stax.WstxInputFactory;
import java.io.CharConversionException;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.PushbackInputStream;
import java.io.UnsupportedEncodingException;
import java.nio.charset.CharacterCodingException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import javax.xml.stream.Location;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import org.codehaus.stax2.XMLInputFactory2;
import org.codehaus.stax2.XMLStreamReader2;
import org.jspecify.annotations.Nullable;

/// One pass over an XML file, the same for every format that is one.
///
/// Off: document type definitions, external entities, entity expansion, elements deeper than 64.
/// Names lose their prefix, because files in the wild use prefixes that they never declare.
final class XmlWalk {
    private static final int DEEPEST = 64;
    private static final int MOST_BLANKS = 4096;
    private static final int RECENT = 64;
    /// So much is looked at to tell the encoding.
    private static final int HEAD = 256;

    private final XmlContent content;
    private final Map<String, String> localNames = new HashMap<>();
    /// The names met last, by their hash: a track repeats a handful of them, and asking a map costs more.
    private final String[] recentNames = new String[RECENT];
    private final String[] recentLocalNames = new String[RECENT];
    private final String[] path = new String[DEEPEST + 1];
    private long linesBefore;
    private boolean declaresType;
    private @Nullable XMLStreamReader2 xml;

    private XmlWalk(XmlContent content) {
        this.content = content;
        Arrays.fill(recentNames, "");
    }

    /// Walks through a whole file and answers with what `content` makes of it.
    ///
    /// Error: IOException only when the stream itself fails.
    static Decoding read(InputStream bytes, XmlContent content) throws IOException {
        return new XmlWalk(content).read(bytes);
    }

    private Decoding read(InputStream bytes) throws IOException {
        try {
            xml = reader(withoutBlanks(bytes));
            walk(xml);
        } catch (WstxEOFException end) {
            return content.cutOff(line(end), "the XML is not closed");
        } catch (XMLStreamException fault) {
            rethrowBrokenStream(fault);
            if (fault.getNestedException() instanceof EOFException) {
                return content.cutOff(line(fault), "the packed file ends too early");
            }
            return content.illFormed(line(fault), firstLine(fault.getMessage()), !declaresType);
        } catch (IllegalArgumentException | IllegalStateException fault) {
            // Woodstox answers some impossible encodings and signs with these.
            return content.illFormed(0, firstLine(fault.getMessage()), !declaresType);
        }
        return content.finish();
    }

    private static XMLStreamReader2 reader(PushbackInputStream bytes) throws IOException, XMLStreamException {
        byte[] head = bytes.readNBytes(HEAD);
        int mark = XmlEncoding.byteOrderMark(head);
        boolean utf8 = XmlEncoding.isUtf8(head);
        bytes.unread(head, utf8 ? mark : 0, utf8 ? head.length - mark : head.length);
        return (XMLStreamReader2)
                (utf8
                        ? factory().createXMLStreamReader(new Utf8Signs(bytes))
                        : factory().createXMLStreamReader(bytes));
    }

    private PushbackInputStream withoutBlanks(InputStream bytes) throws IOException {
        PushbackInputStream from = new PushbackInputStream(bytes, HEAD);
        int first = from.read();
        int blanks = 0;
        while (blanks < MOST_BLANKS && (first == ' ' || first == '\t' || first == '\r' || first == '\n')) {
            linesBefore += first == '\n' ? 1 : 0;
            blanks++;
            first = from.read();
        }
        if (first >= 0) {
            from.unread(first);
        }
        if (blanks > 0) {
            content.beginsWithBlanks();
        }
        return from;
    }

    private void walk(XMLStreamReader2 events) throws XMLStreamException {
        XmlText text = new XmlText();
        XmlTag tag = new XmlTag(events, linesBefore);
        int depth = 0;
        // Text behind an inner element's end tag is the layout of the file, or belongs to no value.
        boolean behindStart = false;
        while (events.hasNext()) {
            switch (events.next()) {
                case XMLStreamConstants.START_ELEMENT -> {
                    text.clear();
                    String name = localName(events.getLocalName());
                    path[depth++] = name;
                    content.open(name, tag);
                    behindStart = content.wantsText();
                }
                case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA -> {
                    if (behindStart) {
                        text.add(events.getTextCharacters(), events.getTextStart(), events.getTextLength());
                    }
                }
                case XMLStreamConstants.END_ELEMENT -> {
                    depth--;
                    content.close(path[depth], depth == 0 ? "" : path[depth - 1], text);
                    text.clear();
                    behindStart = false;
                    if (content.isFull()) {
                        return;
                    }
                }
                case XMLStreamConstants.DTD -> declaresType = true;
                default -> {
                    // Comments and processing instructions carry no sample.
                }
            }
        }
    }

    private String localName(String name) {
        int slot = name.hashCode() & (RECENT - 1);
        if (!name.equals(recentNames[slot])) {
            recentLocalNames[slot] = lookedUp(name);
            recentNames[slot] = name;
        }
        return recentLocalNames[slot];
    }

    private String lookedUp(String name) {
        String known = localNames.get(name);
        if (known == null) {
            known = name.substring(name.indexOf(':') + 1);
            // A file that makes up names without end is not followed there.
            if (localNames.size() < 1000) {
                localNames.put(name, known);
            }
        }
        return known;
    }

    /// The line of a fault; of one that the stream below met, where the parser stood.
    private long line(XMLStreamException fault) {
        Location known = fault.getLocation();
        if (known == null && xml != null) {
            known = xml.getLocationInfo().getCurrentLocation();
        }
        return known == null ? 0 : linesBefore + known.getLineNumber();
    }

    private static void rethrowBrokenStream(XMLStreamException fault) throws IOException {
        if (fault.getNestedException() instanceof IOException broken
                && !(broken instanceof CharConversionException)
                && !(broken instanceof EOFException)
                && !(broken instanceof CharacterCodingException)
                && !(broken instanceof UnsupportedEncodingException)) {
            throw broken;
        }
    }

    private static String firstLine(@Nullable String message) {
        String text = message == null ? "" : message;
        int end = text.indexOf('\n');
        return Remarks.shortened(end < 0 ? text : text.substring(0, end), 120);
    }

    private static XMLInputFactory factory() {
        XMLInputFactory factory = new WstxInputFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, true);
        factory.setProperty(XMLInputFactory.IS_COALESCING, false);
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
}
