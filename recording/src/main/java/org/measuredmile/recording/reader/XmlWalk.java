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
import java.util.HashMap;
import java.util.Map;
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

    private final XmlContent content;
    private final Map<String, String> localNames = new HashMap<>();
    private final String[] path = new String[DEEPEST + 1];
    private long linesBefore;
    private boolean declaresType;

    private XmlWalk(XmlContent content) {
        this.content = content;
    }

    /// Walks through a whole file and answers with what `content` makes of it.
    ///
    /// Error: IOException only when the stream itself fails.
    static Decoding read(InputStream bytes, XmlContent content) throws IOException {
        return new XmlWalk(content).read(bytes);
    }

    private Decoding read(InputStream bytes) throws IOException {
        try {
            walk((XMLStreamReader2) factory().createXMLStreamReader(withoutBlanks(bytes)));
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

    private InputStream withoutBlanks(InputStream bytes) throws IOException {
        PushbackInputStream from = new PushbackInputStream(bytes);
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

    private void walk(XMLStreamReader2 xml) throws XMLStreamException {
        XmlText text = new XmlText();
        XmlTag tag = new XmlTag(xml, linesBefore);
        int depth = 0;
        while (xml.hasNext() && !content.isFull()) {
            switch (xml.next()) {
                case XMLStreamConstants.START_ELEMENT -> {
                    text.clear();
                    String name = localName(xml.getLocalName());
                    path[depth++] = name;
                    content.open(name, tag);
                }
                case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA -> {
                    if (content.wantsText()) {
                        text.add(xml.getTextCharacters(), xml.getTextStart(), xml.getTextLength());
                    }
                }
                case XMLStreamConstants.END_ELEMENT -> {
                    depth--;
                    content.close(path[depth], depth == 0 ? "" : path[depth - 1], text);
                    text.clear();
                }
                case XMLStreamConstants.DTD -> declaresType = true;
                default -> {
                    // Comments and processing instructions carry no sample.
                }
            }
        }
    }

    private String localName(String name) {
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

    private long line(XMLStreamException fault) {
        return fault.getLocation() == null
                ? 0
                : linesBefore + fault.getLocation().getLineNumber();
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
