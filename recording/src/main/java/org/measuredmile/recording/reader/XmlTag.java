package org.measuredmile.recording.reader;

import javax.xml.stream.XMLStreamException;
import org.codehaus.stax2.XMLStreamReader2;
import org.codehaus.stax2.typed.TypedValueDecoder;

/// The tag that an element begins with: its line and its attributes.
final class XmlTag {
    private final XMLStreamReader2 xml;
    private final long linesBefore;
    private final NumberDecoder decoder = new NumberDecoder();

    XmlTag(XMLStreamReader2 xml, long linesBefore) {
        this.xml = xml;
        this.linesBefore = linesBefore;
    }

    /// The line of the tag's first sign, counted from 1.
    long line() {
        return linesBefore + xml.getLocationInfo().getStartLocation().getLineNumber();
    }

    /// An attribute as it is written; empty where there is none.
    String attribute(String name) {
        int at = indexOf(name);
        return at < 0 ? "" : xml.getAttributeValue(at);
    }

    /// An attribute as a number; NaN where there is none or it is no number.
    double number(String name) {
        int at = indexOf(name);
        if (at < 0) {
            return Double.NaN;
        }
        try {
            xml.getAttributeAs(at, decoder);
            return decoder.value;
        } catch (XMLStreamException | IllegalArgumentException notDecoded) {
            return Double.NaN;
        }
    }

    private int indexOf(String name) {
        int count = xml.getAttributeCount();
        for (int at = 0; at < count; at++) {
            if (xml.getAttributeLocalName(at).equals(name)) {
                return at;
            }
        }
        return -1;
    }

    /// Takes a number from the parser's own buffer, without making text of it.
    private static final class NumberDecoder extends TypedValueDecoder {
        private double value = Double.NaN;

        @Override
        public void decode(String input) {
            value = NumberText.parse(input.toCharArray(), 0, input.length(), '.');
        }

        @Override
        public void decode(char[] buffer, int start, int end) {
            value = NumberText.parse(buffer, start, end, '.');
        }

        @Override
        public void handleEmptyValue() {
            value = Double.NaN;
        }
    }
}
