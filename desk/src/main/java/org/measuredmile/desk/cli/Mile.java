package org.measuredmile.desk.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/// The command line's beginning: finds the command and turns trouble into one clear line.
///
/// Shape: exit code 0 when it is done, 1 when the data say no, 2 for bad usage or bad input. Output is
/// UTF-8 whatever the terminal's locale.
@Command(
        name = "mile",
        description = "Road tests of electric bikes: from recordings and readings to figures.",
        synopsisSubcommandLabel = "COMMAND",
        mixinStandardHelpOptions = true,
        version = "Measured Mile 0.1.0",
        subcommands = {
            InspectCommand.class,
            ReduceCommand.class,
            ImportCommand.class,
            ExportCommand.class,
            StandingsCommand.class,
            CompareCommand.class,
            ShortlistCommand.class,
            ExpectedCommand.class,
            ControlCommand.class,
            VerdictCommand.class,
            ReplyCommand.class,
            SentencesCommand.class,
            SpecCommand.class,
            RecomputeCommand.class,
            ServeCommand.class,
            DemoCommand.class,
            CoverageCommand.class,
        })
public final class Mile implements Runnable {
    static final int DONE = 0;
    static final int DATA_SAY_NO = 1;
    static final int BAD_INPUT = 2;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public void run() {
        throw new CommandLine.ParameterException(spec.commandLine(), "Give a command.");
    }

    /// Runs one command and says with which code to end.
    public static int run(PrintWriter out, PrintWriter err, String... arguments) {
        var line = new CommandLine(new Mile())
                .setOut(out)
                .setErr(err)
                .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF))
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setUsageHelpWidth(100)
                .setExecutionExceptionHandler((failure, command, parsed) -> say(failure, err));
        int code = line.execute(arguments);
        out.flush();
        err.flush();
        return code;
    }

    private static int say(Exception failure, PrintWriter err) {
        err.println(
                switch (failure) {
                    case Trouble trouble -> trouble.getMessage();
                    case NoSuchFileException missing -> missing.getFile() + ": there is no such file; check the path";
                    case UncheckedIOException disk -> disk.getMessage();
                    case IOException disk -> disk.getMessage();
                    default ->
                        "This should not happen: " + failure + ". Nothing that was kept is lost; report it with the "
                                + "command and the file it was given.";
                });
        return BAD_INPUT;
    }

    public static void main(String[] arguments) {
        var out = new PrintWriter(new FileOutputStream(FileDescriptor.out), false, StandardCharsets.UTF_8);
        var err = new PrintWriter(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
        System.exit(run(out, err, arguments));
    }
}
