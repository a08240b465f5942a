package org.measuredmile.rules;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/// The inner modules are functions of what they are given: the same bytes in give the same bytes out, on any machine,
/// under any locale, zone and charset, at any time.
class PurityTest {
    /// Types whose use alone brings the outside in.
    private static final Set<String> OUTSIDE = Set.of(
            "java.io.File",
            "java.io.FileInputStream",
            "java.io.FileOutputStream",
            "java.io.FileReader",
            "java.io.FileWriter",
            "java.io.RandomAccessFile",
            "java.lang.Process",
            "java.lang.ProcessBuilder",
            "java.lang.Runtime",
            "java.lang.Thread",
            "java.security.SecureRandom",
            "java.text.SimpleDateFormat",
            "java.util.Calendar",
            "java.util.Date",
            "java.util.Timer",
            "java.util.concurrent.CompletableFuture",
            "java.util.concurrent.ExecutorService",
            "java.util.concurrent.Executors",
            "java.util.concurrent.ForkJoinPool",
            "java.util.concurrent.ThreadLocalRandom");

    /// Math may differ in the last bit between machines; StrictMath may not. The roots, rounding and comparisons
    /// that remain in Math are exact by IEEE 754 (Javadoc of java.lang.Math).
    private static final Set<String> INEXACT = Set.of(
            "sin", "cos", "tan", "asin", "acos", "atan", "atan2", "sinh", "cosh", "tanh", "exp", "expm1", "log",
            "log10", "log1p", "pow", "hypot", "cbrt", "random");

    /// Methods and constructors that ask the machine, by owner; the parameters name the form that asks.
    private static final Map<String, Set<String>> ASKS_THE_MACHINE = Map.ofEntries(
            Map.entry("java.util.Locale", Set.of("getDefault()", "getDefault(Category)", "setDefault(Locale)")),
            Map.entry("java.util.TimeZone", Set.of("getDefault()", "setDefault(TimeZone)")),
            Map.entry("java.time.ZoneId", Set.of("systemDefault()")),
            Map.entry("java.nio.charset.Charset", Set.of("defaultCharset()")),
            Map.entry("java.util.UUID", Set.of("randomUUID()")),
            Map.entry("java.util.Random", Set.of("<init>()")),
            Map.entry("java.util.SplittableRandom", Set.of("<init>()")),
            Map.entry("java.util.random.RandomGenerator", Set.of("getDefault()")),
            Map.entry("java.util.Collections", Set.of("shuffle(List)")),
            Map.entry(
                    "java.lang.String",
                    Set.of(
                            "format(String, Object[])",
                            "formatted(Object[])",
                            "toLowerCase()",
                            "toUpperCase()",
                            "getBytes()",
                            "<init>(byte[])",
                            "<init>(byte[], int, int)")),
            Map.entry("java.util.Formatter", Set.of("<init>()", "<init>(Appendable)")),
            Map.entry("java.io.InputStreamReader", Set.of("<init>(InputStream)")),
            Map.entry("java.io.OutputStreamWriter", Set.of("<init>(OutputStream)")),
            Map.entry("java.io.PrintStream", Set.of("<init>(OutputStream)", "<init>(OutputStream, boolean)")),
            Map.entry("java.io.ByteArrayOutputStream", Set.of("toString()")),
            Map.entry("java.util.Scanner", Set.of("<init>(InputStream)")),
            Map.entry("java.text.DecimalFormat", Set.of("<init>()", "<init>(String)")),
            Map.entry("java.text.DecimalFormatSymbols", Set.of("<init>()", "getInstance()")),
            Map.entry(
                    "java.text.NumberFormat",
                    Set.of("getInstance()", "getNumberInstance()", "getIntegerInstance()", "getPercentInstance()")),
            Map.entry("java.text.Collator", Set.of("getInstance()")),
            Map.entry(
                    "java.time.format.DateTimeFormatter",
                    Set.of("ofPattern(String)", "ofLocalizedDate(FormatStyle)", "ofLocalizedTime(FormatStyle)")),
            Map.entry("java.lang.Throwable", Set.of("printStackTrace()")));

    private static final Set<String> SYSTEM_ALLOWED = Set.of("arraycopy", "identityHashCode");

    private static List<String> present(List<String> modules) {
        return modules.stream()
                .filter(module -> !House.mainJava(module).isEmpty())
                .toList();
    }

    private static JavaClasses seen(List<String> modules) {
        var classes = House.classes(modules);
        House.requireAllSeen(classes, modules);
        return classes;
    }

    @Test
    void innerModulesTouchNoFileNetworkThreadOrDatabase() {
        var outside = DescribedPredicate.<JavaClass>describe(
                        "touches what lies outside", type -> OUTSIDE.contains(type.getName()))
                .or(resideInAnyPackage("java.nio.file..", "java.net..", "java.sql..", "javax.sql..", "java.awt.."));
        noClasses().should().dependOnClassesThat(outside).check(seen(present(House.PURE)));
    }

    @Test
    void innerModulesAndTheSimulatorAskTheMachineNothing() {
        var modules = new ArrayList<>(present(House.PURE));
        modules.addAll(present(List.of("demo")));
        noClasses().should().accessTargetWhere(asksTheMachine()).check(seen(modules));
    }

    @Test
    void sinesAndLogarithmsComeFromStrictMath() {
        noClasses().should().accessTargetWhere(inexact()).check(seen(present(House.PURE)));
    }

    private static DescribedPredicate<JavaAccess<?>> inexact() {
        return DescribedPredicate.describe(
                "is a function of Math that need not give the same bits everywhere",
                access -> access.getTargetOwner().getName().equals("java.lang.Math")
                        && INEXACT.contains(access.getTarget().getName()));
    }

    private static DescribedPredicate<JavaAccess<?>> asksTheMachine() {
        return DescribedPredicate.describe("asks the clock, the locale, the zone, chance or the console", access -> {
            var owner = access.getTargetOwner().getName();
            var name = access.getTarget().getName();
            if (owner.equals("java.lang.System")) {
                return !SYSTEM_ALLOWED.contains(name);
            }
            if (owner.startsWith("java.time.")) {
                boolean clock =
                        name.equals("now") && !signature(access.getTarget()).equals("now(Clock)");
                boolean system =
                        owner.equals("java.time.Clock") && (name.startsWith("system") || name.startsWith("tick"));
                if (clock || system) {
                    return true;
                }
            }
            if (owner.startsWith("java.util.stream.") || owner.startsWith("java.util.")) {
                if (name.equals("parallel") || name.equals("parallelStream") || name.startsWith("parallelSort")) {
                    return true;
                }
            }
            return ASKS_THE_MACHINE.getOrDefault(owner, Set.of()).contains(signature(access.getTarget()));
        });
    }

    private static String signature(AccessTarget target) {
        if (!(target instanceof AccessTarget.CodeUnitAccessTarget unit)) {
            return target.getName();
        }
        var parameters = unit.getRawParameterTypes().stream()
                .map(JavaClass::getSimpleName)
                .toList();
        return target.getName() + "(" + String.join(", ", parameters) + ")";
    }

    /// What the rules have to find.
    static final class Planted {
        double asks() {
            return Instant.now().toEpochMilli() + System.nanoTime() + new Random().nextDouble();
        }

        double asksNothing(Clock clock) {
            return Instant.now(clock).toEpochMilli() + new Random(7).nextDouble() + Math.sqrt(2) + StrictMath.sin(1);
        }

        double lastBit() {
            return Math.sin(1);
        }
    }

    @Test
    void plantedCallsAreFoundAndTheirHarmlessFormsAreNot() {
        var planted = new ClassFileImporter().importClasses(Planted.class).get(Planted.class);
        var found = planted.getAccessesFromSelf().stream()
                .filter(access -> asksTheMachine().or(inexact()).test(access))
                .map(access -> access.getOrigin().getName() + " " + signature(access.getTarget()))
                .toList();
        assertThat(found)
                .containsExactlyInAnyOrder("asks now()", "asks nanoTime()", "asks <init>()", "lastBit sin(double)");
    }

    /// The list above is of strings: each has to be a method that exists, or it would never be found.
    @Test
    void everyBannedCallExists() throws ClassNotFoundException {
        for (var entry : ASKS_THE_MACHINE.entrySet()) {
            var type = Class.forName(entry.getKey());
            var existing = new ArrayList<String>();
            for (var constructor : type.getConstructors()) {
                existing.add("<init>(" + names(constructor.getParameterTypes()) + ")");
            }
            for (var method : type.getMethods()) {
                existing.add(method.getName() + "(" + names(method.getParameterTypes()) + ")");
            }
            assertThat(existing).as(entry.getKey()).containsAll(entry.getValue());
        }
        for (var type : OUTSIDE) {
            assertThat(Class.forName(type).getName()).isEqualTo(type);
        }
    }

    private static String names(Class<?>[] types) {
        var names = new ArrayList<String>();
        for (var type : types) {
            names.add(type.getSimpleName());
        }
        return String.join(", ", names);
    }
}
