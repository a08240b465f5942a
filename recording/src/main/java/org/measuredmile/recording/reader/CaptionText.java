package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/// The words of a cue without what only steers how they are shown.
///
/// Source: W3C, WebVTT, 4.2.2 (tags, times within words) and HTML's character references; tags with attributes and
/// placements in braces are common practice in SRT, no source.
final class CaptionText {
    private static final Pattern TAG = Pattern.compile(
            "</?(?:c|i|b|u|s|v|ruby|rt|lang|font)(?:[. \\t][^<>]*)?>"
                    + "|<(?:\\d+:)?\\d\\d:\\d\\d\\.\\d{3}>|\\{\\\\[^{}]*\\}",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern REFERENCE =
            Pattern.compile("&(?:#(\\d{1,7})|#[xX]([0-9a-fA-F]{1,6})|([a-zA-Z]{2,5}));");
    private static final Map<String, String> NAMED =
            Map.of("amp", "&", "lt", "<", "gt", ">", "nbsp", " ", "lrm", "", "rlm", "", "quot", "\"", "apos", "'");

    private CaptionText() {}

    /// The lines without tags, with references resolved, spaces single; empty ones left out.
    static List<String> plain(List<String> lines) {
        List<String> plain = new ArrayList<>();
        for (String line : lines) {
            String words = resolved(TAG.matcher(line).replaceAll(""))
                    .replaceAll("[\\s\\u00A0]+", " ")
                    .strip();
            if (!words.isEmpty()) {
                plain.add(words);
            }
        }
        return plain;
    }

    private static String resolved(String text) {
        return REFERENCE.matcher(text).replaceAll(match -> Matcher.quoteReplacement(sign(match)));
    }

    private static String sign(java.util.regex.MatchResult reference) {
        if (reference.group(3) != null) {
            return NAMED.getOrDefault(reference.group(3), reference.group());
        }
        int code = reference.group(1) != null
                ? Integer.parseInt(reference.group(1))
                : Integer.parseInt(reference.group(2), 16);
        return Character.isValidCodePoint(code) && !Character.isISOControl(code)
                ? Character.toString(code)
                : reference.group();
    }
}
