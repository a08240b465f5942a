package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.measuredmile.recording.ColumnMeaning;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;

/// Counts what a reader notices and tells each thing once, at its first place: a file of a million bad lines has one
/// finding, not a million.
final class Remarks {
    private static final int LONGEST_QUOTE = 40;

    private final String source;
    private final boolean inBytes;
    private final Map<Remark, Noticed> noticed = new EnumMap<>(Remark.class);
    private final List<Finding> others = new ArrayList<>();

    private static final class Noticed {
        private long count;
        private final long line;
        private final String first;

        private Noticed(long line, String first) {
            this.line = line;
            this.first = first;
        }
    }

    Remarks(String source) {
        this(source, false);
    }

    /// @param inBytes whether places are bytes of the file and not its lines
    Remarks(String source, boolean inBytes) {
        this.source = source;
        this.inBytes = inBytes;
    }

    String source() {
        return source;
    }

    /// Counts one occurrence at a line, or at a byte where places are bytes; 0 stands for the file as a whole.
    void count(Remark remark, long line, String what) {
        noticed.computeIfAbsent(remark, key -> new Noticed(line, quoted(what))).count++;
    }

    void count(Remark remark, long line) {
        count(remark, line, "");
    }

    long counted(Remark remark) {
        Noticed found = noticed.get(remark);
        return found == null ? 0 : found.count;
    }

    void add(Finding finding) {
        others.add(finding);
    }

    /// Everything noticed, as findings, counted ones first.
    List<Finding> findings() {
        List<Finding> all = new ArrayList<>();
        noticed.forEach((remark, found) -> all.add(new Finding(
                remark.code(), remark.level(), place(found.line), message(remark, found), remark.remedy())));
        all.addAll(others);
        return all;
    }

    private Place place(long at) {
        if (at <= 0) {
            return Place.in(source);
        }
        return inBytes ? Place.atByte(source, at) : Place.atLine(source, at);
    }

    private static String message(Remark remark, Noticed found) {
        return remark.message().replace("{n}", Long.toString(found.count)).replace("{first}", found.first);
    }

    /// A piece of a file that may be shown: short, and without signs that could disturb a screen.
    static String quoted(String text) {
        return shortened(text, LONGEST_QUOTE);
    }

    static String shortened(String text, int longest) {
        StringBuilder shown = new StringBuilder();
        for (int i = 0; i < text.length() && shown.length() < longest; i++) {
            char sign = text.charAt(i);
            boolean plain = !Character.isISOControl(sign) && !Character.isSurrogate(sign);
            shown.append(plain ? sign : '·');
        }
        return text.length() > longest ? shown + "…" : shown.toString();
    }

    /// A refusal for one reason, with whatever was counted before.
    Decoding refuse(String code, Place place, String message, String remedy) {
        return refuse(code, place, message, remedy, List.of());
    }

    /// The same of a table whose columns are known all the same.
    Decoding refuse(String code, Place place, String message, String remedy, List<ColumnMeaning> columns) {
        List<Finding> all = new ArrayList<>();
        all.add(Finding.refused(code, place, message, remedy));
        all.addAll(findings());
        return new Decoding.Refused(source, all, columns);
    }
}
