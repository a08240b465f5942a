package org.measuredmile.rules;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/// Who may know whom: `quantity ← recording ← roadload ← trial ← comparison ← publication ← desk`; `archive` hangs on
/// `trial` and only `desk` knows it; `demo` knows `recording` and only `desk` and `benchmark` know it; nobody knows
/// `benchmark`.
class ModuleArrowsTest {
    private static final String HOUSE = "org.measuredmile.";

    /// Our own modules that each may know, itself apart.
    private static final Map<String, List<String>> KNOWS = new TreeMap<>(Map.of(
            "quantity", List.of(),
            "recording", List.of("quantity"),
            "roadload", List.of("quantity", "recording"),
            "trial", List.of("quantity", "recording", "roadload"),
            "comparison", List.of("quantity", "recording", "roadload", "trial"),
            "publication", List.of("quantity", "recording", "roadload", "trial", "comparison"),
            "archive", List.of("quantity", "recording", "roadload", "trial"),
            "demo", List.of("quantity", "recording"),
            "benchmark", List.of("quantity", "recording", "roadload", "trial", "comparison", "demo"),
            "desk",
                    List.of(
                            "quantity",
                            "recording",
                            "roadload",
                            "trial",
                            "comparison",
                            "publication",
                            "archive",
                            "demo")));

    /// Libraries that the modules without a framework may use.
    private static final Map<String, List<String>> LIBRARIES = new TreeMap<>(Map.of(
            "quantity", List.of("org.hipparchus..", "tech.units..", "javax.measure..", "si.uom.."),
            "recording",
                    List.of(
                            "org.hipparchus..",
                            "de.siegmar.fastcsv..",
                            "com.ctc.wstx..",
                            "org.codehaus.stax2..",
                            "javax.xml.stream..",
                            "net.sf.geographiclib..",
                            "org.snakeyaml.engine.."),
            "roadload", List.of("org.hipparchus.."),
            "trial", List.of("org.hipparchus.."),
            "comparison", List.of("org.hipparchus..", "org.snakeyaml.engine.."),
            "publication", List.of("org.hipparchus..", "tools.jackson..", "com.fasterxml.jackson.annotation..")));

    private static List<String> present() {
        return House.MODULES.stream()
                .filter(module -> !House.mainJava(module).isEmpty())
                .toList();
    }

    @TestFactory
    List<DynamicTest> eachModuleKnowsOnlyThoseInsideIt() {
        var tests = new ArrayList<DynamicTest>();
        for (var module : present()) {
            tests.add(DynamicTest.dynamicTest(module, () -> {
                var classes = House.classes(List.of(module));
                House.requireAllSeen(classes, List.of(module));
                var known = new ArrayList<>(KNOWS.getOrDefault(module, List.of()));
                known.add(module);
                var allowed = known.stream().map(name -> HOUSE + name + "..").toArray(String[]::new);
                var ours = resideInAnyPackage(HOUSE + ".");
                var strangers = ours.and(DescribedPredicate.not(resideInAnyPackage(allowed)));
                noClasses().should().dependOnClassesThat(strangers).check(classes);
                classes().should().resideInAPackage(HOUSE + module + "..").check(classes);
            }));
        }
        assertThat(tests).hasSizeGreaterThanOrEqualTo(3);
        return tests;
    }

    @TestFactory
    List<DynamicTest> innerModulesUseOnlyTheLibrariesNamedForThem() {
        var tests = new ArrayList<DynamicTest>();
        for (var module : present()) {
            if (!LIBRARIES.containsKey(module)) {
                continue;
            }
            tests.add(DynamicTest.dynamicTest(module, () -> {
                var classes = House.classes(List.of(module));
                House.requireAllSeen(classes, List.of(module));
                var allowed = new ArrayList<>(List.of("java..", "org.jspecify..", HOUSE + "."));
                allowed.addAll(LIBRARIES.getOrDefault(module, List.of()));
                classes()
                        .should()
                        .onlyDependOnClassesThat(plain().or(resideInAnyPackage(allowed.toArray(String[]::new))))
                        .check(classes);
            }));
        }
        return tests;
    }

    private static DescribedPredicate<JavaClass> plain() {
        return DescribedPredicate.describe(
                "is a primitive or an array of one",
                type -> type.getBaseComponentType().isPrimitive());
    }

    @Test
    void springLivesInTheWebAppAndItsDatabaseClientInTheArchive() {
        var modules = present();
        var classes = House.classes(modules);
        House.requireAllSeen(classes, modules);
        noClasses()
                .that()
                .resideOutsideOfPackages(HOUSE + "desk.web..", HOUSE + "archive..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.springframework..", "jakarta..", "gg.jte..")
                .check(classes);
        noClasses()
                .that()
                .resideInAPackage(HOUSE + "archive..")
                .should()
                .dependOnClassesThat(resideInAnyPackage("org.springframework..", "jakarta..")
                        .and(DescribedPredicate.not(resideInAnyPackage(
                                "org.springframework.jdbc..",
                                "org.springframework.dao..",
                                "org.springframework.transaction.."))))
                .allowEmptyShould(true)
                .check(classes);
        noClasses()
                .that()
                .resideOutsideOfPackage(HOUSE + "desk.cli..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("picocli..", "me.tongfei.progressbar..")
                .check(classes);
    }

    @Test
    void noPackagesKnowEachOtherInACircle() {
        var modules = present();
        var classes = House.classes(modules);
        House.requireAllSeen(classes, modules);
        // The list of trials stands beside the contract and names every trial: that is what it is for.
        slices().matching(HOUSE + "(**)")
                .should()
                .beFreeOfCycles()
                .ignoreDependency(
                        DescribedPredicate.describe(
                                "the list of trials", type -> type.getName().equals(HOUSE + "trial.Trials")),
                        DescribedPredicate.alwaysTrue())
                .check(classes);
    }
}
