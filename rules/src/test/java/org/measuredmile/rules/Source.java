package org.measuredmile.rules;

import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.util.List;
import java.util.Locale;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.ToolProvider;

/// One text file of the repository, by its path from the root.
record Source(String path, String text) {
    /// A parsed Java file, and the means to tell where in it a tree stands.
    record Parsed(CompilationUnitTree unit, Trees trees) {}

    List<String> lines() {
        return text.lines().toList();
    }

    String name() {
        return path.substring(path.lastIndexOf('/') + 1);
    }

    boolean isPackageInfo() {
        return name().equals("package-info.java");
    }

    boolean isTest() {
        return path.contains("/src/test/");
    }

    /// The package folder's path, as in `quantity/src/main/java/org/measuredmile/quantity`.
    String folder() {
        return path.substring(0, Math.max(0, path.lastIndexOf('/')));
    }

    int lineOf(int offset) {
        return 1
                + (int) text.substring(0, Math.min(offset, text.length()))
                        .chars()
                        .filter(sign -> sign == '\n')
                        .count();
    }

    /// The file's syntax tree; names are not resolved.
    Parsed parse() {
        var file = new SimpleJavaFileObject(URI.create("text:///" + name()), JavaFileObject.Kind.SOURCE) {
            @Override
            public CharSequence getCharContent(boolean ignoreEncodingErrors) {
                return text;
            }
        };
        var compiler = ToolProvider.getSystemJavaCompiler();
        var task = (JavacTask) compiler.getTask(null, null, fault -> {}, List.of("-proc:none"), null, List.of(file));
        try {
            var unit = task.parse().iterator().next();
            return new Parsed(unit, Trees.instance(task));
        } catch (IOException e) {
            throw new UncheckedIOException("parsing " + path, e);
        }
    }

    /// The text without comments, each sign of a comment a blank: offsets and lines stay what they were.
    String withoutComments() {
        var code = new StringBuilder(text);
        boolean inText = false;
        for (int at = 0; at < code.length(); ) {
            int end = at + 1;
            if (text.startsWith("\"\"\"", at)) {
                int close = text.indexOf("\"\"\"", at + 3);
                end = close < 0 ? text.length() : close + 3;
            } else if (text.charAt(at) == '"' || text.charAt(at) == '\'') {
                end = endOfLiteral(at);
            } else if (text.startsWith("//", at)) {
                int close = text.indexOf('\n', at);
                end = close < 0 ? text.length() : close;
                inText = true;
            } else if (text.startsWith("/*", at)) {
                int close = text.indexOf("*/", at + 2);
                end = close < 0 ? text.length() : close + 2;
                inText = true;
            }
            for (int sign = at; inText && sign < end; sign++) {
                if (code.charAt(sign) != '\n') {
                    code.setCharAt(sign, ' ');
                }
            }
            inText = false;
            at = end;
        }
        return code.toString();
    }

    private int endOfLiteral(int start) {
        char quote = text.charAt(start);
        int at = start + 1;
        while (at < text.length() && text.charAt(at) != quote && text.charAt(at) != '\n') {
            at += text.charAt(at) == '\\' ? 2 : 1;
        }
        return Math.min(at + 1, text.length());
    }

    String lowerCaseText() {
        return text.toLowerCase(Locale.ROOT);
    }
}
