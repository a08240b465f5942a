package org.measuredmile.rules;

import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.measuredmile.trial.Trial;
import org.measuredmile.trial.Trials;

/// A trial is one package that nothing outside knows by name, and one line in the list of trials.
class TrialHouseTest {
    /// A study of two rides by their names: which ride is left out is what it is about.
    private static final String LEFT_OUT = "desk/coverage/LeaveOneOut.java";

    private static final String BELOW = "org.measuredmile.trial.";

    /// Words that mean a trial wherever they stand in code; the other ids are plain English as well (range, climb).
    private static final List<String> UNMISTAKABLE =
            List.of("braking", "assistspeed", "weighin", "standingstart", "coastdown", "riderfit");

    /// Modules that handle every trial alike.
    private static final List<String> ALIKE = List.of("archive", "publication", "desk");

    private static Set<String> trialPackages() {
        var names = new TreeSet<String>();
        for (var source : House.mainJava("trial")) {
            var below = source.folder().split("/org/measuredmile/trial/", 2);
            if (below.length == 2) {
                names.add(below[1].split("/", 2)[0]);
            }
        }
        return names;
    }

    @Test
    void everyPackageBelowTrialHoldsOneTrialThatStandsInTheList() {
        var classes = House.classes(List.of("trial"));
        House.requireAllSeen(classes, List.of("trial"));
        var listed =
                Trials.ALL.stream().map(trial -> trial.getClass().getName()).toList();
        var holding = new ArrayList<String>();
        for (var name : trialPackages()) {
            var trials = classes.stream()
                    .filter(type -> type.getPackageName().equals(BELOW + name)
                            || type.getPackageName().startsWith(BELOW + name + "."))
                    .filter(type -> type.isAssignableTo(Trial.class))
                    .filter(type -> !type.getModifiers().contains(JavaModifier.ABSTRACT))
                    .map(JavaClass::getName)
                    .toList();
            assertThat(trials).as("trials in package trial.%s", name).hasSize(1);
            holding.addAll(trials);
        }
        assertThat(listed).as("Trials.ALL").containsExactlyInAnyOrderElementsOf(holding);
    }

    @Test
    void aTrialIsNamedAfterItsPackageAndItsFiguresAfterIt() {
        for (var trial : Trials.ALL) {
            var declaration = trial.declaration();
            assertThat(trial.getClass().getPackageName()).isEqualTo(BELOW + declaration.id());
            assertThat(declaration.figures().isEmpty()).isEqualTo(declaration.isReadOnce());
            assertThat(declaration.figures())
                    .allSatisfy(figure -> assertThat(figure.id()).startsWith(declaration.id() + "."));
        }
    }

    @Test
    void noTrialKnowsAnother() {
        var classes = House.classes(List.of("trial"));
        House.requireAllSeen(classes, List.of("trial"));
        slices().matching(BELOW + "(*)..")
                .should()
                .notDependOnEachOther()
                .allowEmptyShould(true)
                .check(classes);
    }

    @Test
    void weighingInIsOneShortFile() {
        var files = House.mainJava("trial").stream()
                .filter(source -> source.folder().contains("/trial/weighin"))
                .filter(source -> !source.isPackageInfo())
                .toList();
        if (!trialPackages().contains("weighin")) {
            assertThat(files).isEmpty();
            return;
        }
        assertThat(files).hasSize(1);
        assertThat(files.getFirst().lines()).as(files.getFirst().path()).hasSizeLessThan(120);
    }

    @Test
    void archivePublicationAndDeskNameNoTrial() {
        var faults = new ArrayList<Fault>();
        for (var module : ALIKE) {
            for (var source :
                    House.sources(House.ROOT.resolve(module).resolve("src/main"), ".java", ".jte", ".sql", ".js")) {
                if (!source.path().endsWith(LEFT_OUT)) {
                    faults.addAll(trialsNamedIn(source, trialPackages()));
                }
            }
        }
        TidinessTest.assertNone(faults);
    }

    @Test
    void aPlantedTrialNameIsFound() {
        var packages = Set.of("braking", "range");
        assertThat(trialsNamedIn(new Source("a.java", "int brakingRuns;"), packages))
                .hasSize(1);
        assertThat(trialsNamedIn(new Source("a.java", "// braking is one\nint runs;"), packages))
                .isEmpty();
        assertThat(trialsNamedIn(new Source("a.java", "f(\"range.distance\")"), packages))
                .hasSize(1);
        assertThat(trialsNamedIn(new Source("a.java", "import org.measuredmile.trial.range.Range;"), packages))
                .hasSize(1);
        assertThat(trialsNamedIn(new Source("a.java", "the(range, \"out of range\")"), packages))
                .isEmpty();
    }

    private static List<Fault> trialsNamedIn(Source source, Set<String> packages) {
        var names = String.join("|", packages);
        var pattern = "(?i)" + String.join("|", UNMISTAKABLE);
        if (!names.isEmpty()) {
            pattern += "|\\btrial\\.(" + names + ")\\b|\"(" + names + ")[\".]";
        }
        var faults = new ArrayList<Fault>();
        var code = source.path().endsWith(".java") ? source.withoutComments() : source.text();
        var matcher = Pattern.compile(pattern).matcher(code);
        while (matcher.find()) {
            var what = "names a trial (" + matcher.group() + ")";
            var remedy = "take it from the trial's declaration";
            faults.add(new Fault("trial-name", source.path(), source.lineOf(matcher.start()), what, remedy));
        }
        return faults;
    }
}
