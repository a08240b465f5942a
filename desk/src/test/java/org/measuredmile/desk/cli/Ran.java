package org.measuredmile.desk.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Arrays;
import org.measuredmile.archive.json.Json;
import tools.jackson.databind.JsonNode;

/// A command that was run: its exit code and what it printed.
record Ran(int exit, String out, String err) {
    static Ran mile(Object... arguments) {
        var out = new StringWriter();
        var err = new StringWriter();
        var words = Arrays.stream(arguments)
                .map(one -> one instanceof Path path ? path.toString() : String.valueOf(one))
                .toArray(String[]::new);
        int exit = Mile.run(new PrintWriter(out), new PrintWriter(err), words);
        return new Ran(exit, out.toString(), err.toString());
    }

    JsonNode json() {
        return Json.parse(out);
    }
}
