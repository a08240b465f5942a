package org.measuredmile.recording.reader;

import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/// Whether an XML file is UTF-8, by its first bytes; every other encoding is left to the parser to tell.
///
/// Source: XML 1.0 (fifth edition), 4.3.3 and appendix F: without a mark and a declaration of another encoding, UTF-8.
final class XmlEncoding {
    private static final Pattern DECLARED = Pattern.compile("\\sencoding\\s*=\\s*[\"']([^\"']*)[\"']");

    private XmlEncoding() {}

    /// How many bytes the mark of UTF-8 at the beginning takes.
    static int byteOrderMark(byte[] head) {
        boolean marked =
                head.length >= 3 && (head[0] & 0xFF) == 0xEF && (head[1] & 0xFF) == 0xBB && (head[2] & 0xFF) == 0xBF;
        return marked ? 3 : 0;
    }

    static boolean isUtf8(byte[] head) {
        String text = new String(head, StandardCharsets.ISO_8859_1).substring(byteOrderMark(head));
        if (!text.startsWith("<") || text.startsWith("<\0")) {
            return false;
        }
        if (!text.startsWith("<?xml")) {
            return true;
        }
        int end = text.indexOf("?>");
        if (end < 0) {
            return false;
        }
        Matcher declared = DECLARED.matcher(text.substring(0, end));
        return !declared.find() || declared.group(1).equalsIgnoreCase("utf-8");
    }
}
