package org.measuredmile.rules;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/// The repository as the rules see it: its modules, its sources, its compiled classes.
final class House {
    /// Modules with code that ships, inner first; and the one that only measures.
    static final List<String> MODULES = List.of(
            "quantity",
            "recording",
            "roadload",
            "trial",
            "comparison",
            "archive",
            "publication",
            "demo",
            "desk",
            "benchmark");

    /// Modules that know no framework, file system, clock or network.
    static final List<String> PURE = List.of("quantity", "recording", "roadload", "trial", "comparison", "publication");

    private static final Set<String> NOT_OURS = Set.of(".git", "target", "node_modules", ".idea", ".vscode");

    private static final Map<List<String>, JavaClasses> IMPORTED = new ConcurrentHashMap<>();

    static final Path ROOT = findRoot();

    private House() {}

    private static Path findRoot() {
        var folder = Path.of("").toAbsolutePath();
        while (folder != null && !Files.exists(folder.resolve("verify"))) {
            folder = folder.getParent();
        }
        if (folder == null) {
            throw new IllegalStateException("no folder above this one holds the script verify");
        }
        return folder;
    }

    /// Text files under a folder whose name ends in one of the given ways; empty where the folder does not exist.
    static List<Source> sources(Path under, String... endings) {
        var found = new ArrayList<Source>();
        if (!Files.isDirectory(under)) {
            return found;
        }
        try {
            Files.walkFileTree(under, new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
                    var name = folder.getFileName().toString();
                    return NOT_OURS.contains(name) ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                    for (String ending : endings) {
                        if (file.getFileName().toString().endsWith(ending)) {
                            found.add(read(file));
                            break;
                        }
                    }
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException e) {
            throw new UncheckedIOException("reading " + under, e);
        }
        return found;
    }

    private static Source read(Path file) throws IOException {
        var path = ROOT.relativize(file).toString().replace('\\', '/');
        return new Source(path, Files.readString(file, StandardCharsets.UTF_8));
    }

    /// Java sources that ship, of one module.
    static List<Source> mainJava(String module) {
        return sources(ROOT.resolve(module).resolve("src/main/java"), ".java");
    }

    /// Every Java source, tests included.
    static List<Source> allJava() {
        return sources(ROOT, ".java");
    }

    /// Compiled classes that ship, of the given modules; those without sources have none.
    static JavaClasses classes(List<String> modules) {
        return IMPORTED.computeIfAbsent(List.copyOf(modules), House::importClasses);
    }

    private static JavaClasses importClasses(List<String> modules) {
        var folders = modules.stream()
                .filter(module -> !mainJava(module).isEmpty())
                .map(module -> ROOT.resolve(module).resolve("target/classes"))
                .toList();
        return new ClassFileImporter().importPaths(folders);
    }

    /// A rule that looks at no class always holds; so each source file has to have given at least one.
    static void requireAllSeen(JavaClasses classes, List<String> modules) {
        long files = modules.stream()
                .flatMap(module -> mainJava(module).stream())
                .filter(source -> !source.isPackageInfo())
                .count();
        if (classes.size() < files || files == 0) {
            throw new AssertionError("only " + classes.size() + " classes of " + files + " source files were seen in "
                    + modules + ": build all modules before the rules");
        }
    }
}
