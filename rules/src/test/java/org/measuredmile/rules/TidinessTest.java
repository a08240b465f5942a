package org.measuredmile.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/// The whole repository keeps the tidiness rules, named exceptions apart.
class TidinessTest {
    private static final String[] TEXT = {
        ".java",
        ".jte",
        ".md",
        ".xml",
        ".sh",
        ".css",
        ".js",
        ".sql",
        ".yaml",
        ".yml",
        ".csv",
        ".txt",
        ".properties",
        "mile",
        "verify",
        "fuzz",
        "run",
        ".py",
        "find-jdk",
        "build-mile"
    };

    @Test
    void everyFileIsTidy() {
        var java = House.allJava();
        assertThat(java).as("Java sources seen").hasSizeGreaterThan(60);

        var faults = new ArrayList<Fault>();
        for (var source : java) {
            faults.addAll(TidinessRules.fileLength(source));
            faults.addAll(TidinessRules.lineLength(source));
            faults.addAll(TidinessRules.code(source));
        }
        for (var source : House.sources(House.ROOT, TEXT)) {
            faults.addAll(TidinessRules.bannedWords(source));
        }
        assertNone(new Exceptions().apply(faults));
    }

    @Test
    void everyPackageThatShipsSaysWhatItIsAndIsNullMarked() {
        var faults = new ArrayList<Fault>();
        for (var module : House.MODULES) {
            var byFolder = House.mainJava(module).stream().collect(Collectors.groupingBy(Source::folder));
            byFolder.forEach((folder, sources) -> {
                var marked = sources.stream()
                        .anyMatch(source -> source.isPackageInfo()
                                && source.text().contains("@NullMarked")
                                && source.text().contains("///"));
                if (!marked) {
                    var what = "no package-info that says what the package is about and is @NullMarked";
                    faults.add(new Fault("package-info", folder + "/package-info.java", 1, what, "write it"));
                }
            });
        }
        assertNone(faults);
    }

    static void assertNone(List<Fault> faults) {
        if (!faults.isEmpty()) {
            fail(faults.size() + " faults:\n"
                    + faults.stream().map(Fault::toString).collect(Collectors.joining("\n")));
        }
    }
}
