package org.measuredmile.benchmark;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/// What the numbers were measured on.
final class Machine {
    private Machine() {}

    static String facts() {
        return String.format(
                Locale.ROOT,
                "%d cores (%s), JDK %s, %s %s, load %.1f when it began.",
                Runtime.getRuntime().availableProcessors(),
                processor(),
                Runtime.version(),
                System.getProperty("os.name"),
                System.getProperty("os.arch"),
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
    }

    private static String processor() {
        try (var lines = Files.lines(Path.of("/proc/cpuinfo"), StandardCharsets.UTF_8)) {
            return lines.filter(line -> line.startsWith("model name"))
                    .map(line -> line.substring(line.indexOf(':') + 1).strip())
                    .findFirst()
                    .orElse("unknown");
        } catch (IOException noSuchFile) {
            return "unknown";
        }
    }
}
