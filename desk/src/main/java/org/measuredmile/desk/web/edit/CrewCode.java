package org.measuredmile.desk.web.edit;

import java.util.regex.Pattern;

/// A crew member's code: letters and digits, at most 16, never a name with spaces.
public final class CrewCode {
    private static final Pattern CODE = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N}_-]{0,15}");

    private CrewCode() {}

    public static boolean isOne(String text) {
        return CODE.matcher(text).matches();
    }
}
