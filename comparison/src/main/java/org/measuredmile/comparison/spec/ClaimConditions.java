package org.measuredmile.comparison.spec;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;

/// The conditions that a claim is made under, as `rider-mass=75 kg level=lowest` states them.
///
/// Shape: `values` in the order written; a value may hold blanks and ends before the next key, a semicolon, or the end
/// of the text.
public record ClaimConditions(Map<String, String> values, List<Finding> findings) {
    private static final Pattern KEY = Pattern.compile("(?<![^\\s,])(\\p{L}[\\p{L}\\d-]{0,60})[ \\t]{0,9}=");
    private static final int LONGEST_QUOTE = 40;

    public ClaimConditions {
        values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
        findings = List.copyOf(findings);
    }

    /// The conditions in a text; what is no `key=value` is a finding at the place.
    public static ClaimConditions read(String text, Place place) {
        Map<String, String> values = new LinkedHashMap<>();
        List<Finding> findings = new ArrayList<>();
        for (String piece : text.split(";")) {
            List<MatchResult> keys = KEY.matcher(piece).results().toList();
            String before = bare(
                    keys.isEmpty() ? piece : piece.substring(0, keys.getFirst().start()));
            if (!before.isEmpty()) {
                findings.add(SpecSlip.CONDITION_NOT_READ.at(place, quoted(before)));
            }
            for (int i = 0; i < keys.size(); i++) {
                int end = i + 1 < keys.size() ? keys.get(i + 1).start() : piece.length();
                String value = bare(piece.substring(keys.get(i).end(), end));
                String name = keys.get(i).group(1);
                if (value.isEmpty() || value.contains("=")) {
                    findings.add(SpecSlip.CONDITION_NOT_READ.at(place, quoted(name + "=" + value)));
                } else if (values.putIfAbsent(name, value) != null) {
                    findings.add(SpecSlip.CONDITION_TWICE.at(place, quoted(name)));
                }
            }
        }
        return new ClaimConditions(values, findings);
    }

    /// Without blanks outside and without the comma that parts it from what follows.
    private static String bare(String part) {
        String stripped = part.strip();
        while (stripped.endsWith(",")) {
            stripped = stripped.substring(0, stripped.length() - 1).strip();
        }
        return stripped;
    }

    /// Text of the file's own, for a finding: shortened where it is long, signs that do not print replaced.
    static String quoted(String text) {
        String printable = text.replaceAll("\\p{Cntrl}", " ");
        int signs = printable.codePointCount(0, printable.length());
        return signs <= LONGEST_QUOTE
                ? printable
                : printable.substring(0, printable.offsetByCodePoints(0, LONGEST_QUOTE)) + "…";
    }
}
