package org.measuredmile.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/// Reads one file and ends: what a whole process costs that has nothing warm. usage: Once FILE; prints its samples.
final class Once {
    private Once() {}

    static void main(String[] arguments) throws IOException {
        Path file = Path.of(arguments[0]);
        System.out.println(Decoding.samples("gpx", Files.readAllBytes(file)));
    }
}
