package org.measuredmile.rules;

import com.sun.source.tree.ClassTree;
import com.sun.source.tree.ImportTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.util.TreeScanner;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/// How source text is written: each rule takes one file and gives its faults.
final class TidinessRules {
    static final int LINES_A_FILE = 400;
    static final int SIGNS_A_LINE = 120;
    static final int LINES_A_FUNCTION = 60;

    // Written in parts, so that this file keeps its own rule.
    private static final Pattern UNFINISHED = Pattern.compile("\\b(TO" + "DO|FIX" + "ME|XX" + "X)\\b");
    private static final Pattern SOURCE_MATERIAL = Pattern.compile("(?i)trans" + "cript");
    private static final Pattern MACHINE_PATH =
            Pattern.compile("(^|[^\\p{Alnum}_.])/(wo" + "rk|ro" + "ot|ho" + "me)/[\\p{Alnum}_.]+");

    private static final Pattern REGISTRY = Pattern.compile("https?://(repo|registry|deb)[0-9a-z-]*\\.");

    private static final List<String> EMPTY_WORDS =
            List.of("Manager", "Util", "Utils", "Impl", "Helper", "Helpers", "Info", "Data");

    private TidinessRules() {}

    /// No file so long that one would rather not read it.
    static List<Fault> fileLength(Source source) {
        int lines = source.lines().size();
        if (lines <= LINES_A_FILE) {
            return List.of();
        }
        var what = lines + " lines, more than " + LINES_A_FILE;
        return List.of(new Fault("file-length", source.path(), lines, what, "split it by what it is about"));
    }

    /// No line that a split screen cuts off.
    static List<Fault> lineLength(Source source) {
        var faults = new ArrayList<Fault>();
        var lines = source.lines();
        for (int at = 0; at < lines.size(); at++) {
            int signs = lines.get(at).codePointCount(0, lines.get(at).length());
            if (signs > SIGNS_A_LINE) {
                var what = signs + " signs, more than " + SIGNS_A_LINE;
                faults.add(new Fault("line-length", source.path(), at + 1, what, "break it"));
            }
        }
        return faults;
    }

    /// Words that mark unfinished work, and what must not stand in any file.
    static List<Fault> bannedWords(Source source) {
        var faults = new ArrayList<Fault>();
        find(source, UNFINISHED, "unfinished work", "finish it, or write down what is left in an issue", faults);
        find(source, SOURCE_MATERIAL, "a word that has no place here", "say what is meant", faults);
        find(source, MACHINE_PATH, "a path of one machine", "use a path from the root of the repository", faults);
        find(source, REGISTRY, "a registry's address", "leave it to the tool's own settings", faults);
        return faults;
    }

    private static void find(Source source, Pattern pattern, String what, String remedy, List<Fault> faults) {
        var matcher = pattern.matcher(source.text());
        while (matcher.find()) {
            var found = what + " (" + matcher.group().strip() + ")";
            faults.add(new Fault("banned-word", source.path(), source.lineOf(matcher.start()), found, remedy));
        }
    }

    /// Functions that fit on a screen, imports one by one, names that say something.
    static List<Fault> code(Source source) {
        var faults = new ArrayList<Fault>();
        var parsed = source.parse();
        var positions = parsed.trees().getSourcePositions();
        var lines = parsed.unit().getLineMap();
        new TreeScanner<@Nullable Void, @Nullable Void>() {
            @Override
            public @Nullable Void visitMethod(MethodTree method, @Nullable Void nothing) {
                long start = lines.getLineNumber(positions.getStartPosition(parsed.unit(), method));
                long end = positions.getEndPosition(parsed.unit(), method);
                long length = end < 0 ? 0 : lines.getLineNumber(end) - start + 1;
                if (length > LINES_A_FUNCTION) {
                    var what = method.getName() + " has " + length + " lines, more than " + LINES_A_FUNCTION;
                    faults.add(new Fault("function-length", source.path(), (int) start, what, "take a part out"));
                }
                return super.visitMethod(method, nothing);
            }

            @Override
            public @Nullable Void visitImport(ImportTree tree, @Nullable Void nothing) {
                if (tree.getQualifiedIdentifier().toString().endsWith(".*")) {
                    int line = (int) lines.getLineNumber(positions.getStartPosition(parsed.unit(), tree));
                    faults.add(new Fault(
                            "wildcard-import",
                            source.path(),
                            line,
                            tree.toString().strip(),
                            "name each"));
                }
                return super.visitImport(tree, nothing);
            }

            @Override
            public @Nullable Void visitClass(ClassTree tree, @Nullable Void nothing) {
                var name = tree.getSimpleName().toString();
                boolean saysNothing = EMPTY_WORDS.stream().anyMatch(name::endsWith) || name.startsWith("Abstract");
                if (saysNothing) {
                    int line = (int) lines.getLineNumber(positions.getStartPosition(parsed.unit(), tree));
                    var remedy = "name it by what it is or does";
                    faults.add(new Fault("empty-name", source.path(), line, name + " says nothing", remedy));
                }
                return super.visitClass(tree, nothing);
            }
        }.scan(parsed.unit(), null);
        return faults;
    }
}
