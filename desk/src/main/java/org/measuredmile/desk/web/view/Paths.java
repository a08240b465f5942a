package org.measuredmile.desk.web.view;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.measuredmile.recording.day.Variant;

/// Where the pages are.
public final class Paths {
    private Paths() {}

    public static String bike(String id) {
        return "/bikes/" + segment(id);
    }

    /// The claims of a bike and their verdicts.
    public static String claims(String id) {
        return bike(id) + "/claims";
    }

    /// The sheet for a bike's maker.
    public static String reply(String id) {
        return bike(id) + "/reply";
    }

    /// The bike's spec sheet.
    public static String spec(String bike) {
        return bike(bike) + "/spec";
    }

    public static String day(String id) {
        return "/days/" + segment(id);
    }

    public static String run(String day, String run) {
        return day(day) + "/runs/" + segment(run);
    }

    /// The page of one of a day's files.
    public static String file(String day, String file) {
        return day(day) + "/files/" + segment(file);
    }

    /// The page of a file, with one of its runs chosen.
    public static String file(String day, String file, String run) {
        return file(day, file) + "?run=" + piece(run) + "#chosen";
    }

    /// The page of a file, with a run that a revision changed.
    public static String file(String day, String file, String run, long revision) {
        return file(day, file) + "?run=" + piece(run) + "&kept=" + revision + "#chosen";
    }

    public static String trial(String day, String trial) {
        return day(day) + "/trials/" + segment(trial);
    }

    public static String instruments(String day) {
        return day(day) + "/instruments";
    }

    public static String columns(String day, String instrument) {
        return day(day) + "/columns?instrument=" + piece(instrument);
    }

    /// The words of a clip, as candidates for readings.
    public static String clip(String day, String file) {
        return day(day) + "/clips/" + segment(file);
    }

    public static String content(String sha256, String name) {
        int last = name.lastIndexOf('/');
        return "/recordings/" + sha256 + "?name=" + piece(name.substring(last + 1));
    }

    public static String standing(String figure, Variant variant) {
        var path = new StringBuilder("/standings/").append(piece(figure));
        char before = '?';
        for (Map.Entry<String, String> entry : variant.values().entrySet()) {
            path.append(before)
                    .append("v.")
                    .append(piece(entry.getKey()))
                    .append('=')
                    .append(piece(entry.getValue()));
            before = '&';
        }
        return path.toString();
    }

    /// A name as one piece of a path: signs that would end the piece, or that servers refuse in it, are
    /// written with a tilde.
    private static String segment(String name) {
        return piece(name.replace("~", "~0")
                .replace("/", "~1")
                .replace(";", "~2")
                .replace("\\", "~3")
                .replace("%", "~4"));
    }

    /// The name that a piece of a path stands for.
    public static String name(String segment) {
        return segment.replace("~4", "%")
                .replace("~3", "\\")
                .replace("~2", ";")
                .replace("~1", "/")
                .replace("~0", "~");
    }

    /// A text as the value of a query's field.
    static String query(String text) {
        return piece(text);
    }

    static String piece(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
