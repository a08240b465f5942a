package org.measuredmile.quantity;

import java.util.Map;

/// Brings the typographic forms of one sign into one form before a text is read.
final class CharacterForms {
    private static final Map<Character, String> FORMS = Map.ofEntries(
            Map.entry('\u00a0', " "), // no-break space
            Map.entry('\u2007', " "), // figure space
            Map.entry('\u2009', " "), // thin space
            Map.entry('\u202f', " "), // narrow no-break space
            Map.entry('\ufeff', " "), // byte order mark
            Map.entry('\u2212', "-"), // minus
            Map.entry('\u2013', "-"), // en dash
            Map.entry('\u2018', "'"),
            Map.entry('\u2019', "'"),
            Map.entry('\u2032', "'"), // prime
            Map.entry('\u00b4', "'"), // acute accent
            Map.entry('\u201c', "\""),
            Map.entry('\u201d', "\""),
            Map.entry('\u2033', "\""), // double prime
            Map.entry('\u2044', "/"), // fraction slash
            Map.entry('\u2215', "/"), // division slash
            Map.entry('\u22c5', "·"), // dot operator
            Map.entry('\u03bc', "\u00b5"), // Greek mu to the micro sign
            Map.entry('\u00ba', "°"), // ordinal sign
            Map.entry('\u02da', "°"), // ring above
            Map.entry('\u2103', "°C"),
            Map.entry('\u2109', "°F"),
            Map.entry('\u2099', "n"), // the index of standard gravity
            Map.entry('¼', " 1/4"),
            Map.entry('½', " 1/2"),
            Map.entry('¾', " 3/4"),
            Map.entry('⅓', " 1/3"),
            Map.entry('⅔', " 2/3"),
            Map.entry('⅛', " 1/8"),
            Map.entry('⅜', " 3/8"),
            Map.entry('⅝', " 5/8"),
            Map.entry('⅞', " 7/8"));

    private CharacterForms() {}

    static String plain(String text) {
        var plain = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char sign = text.charAt(i);
            String form = FORMS.get(sign);
            if (form == null) {
                plain.append(sign);
            } else {
                plain.append(form);
            }
        }
        return plain.toString().replace("''", "\"");
    }
}
