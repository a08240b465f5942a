package org.measuredmile.desk.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/// `mile serve`: the crew's archive as pages on this machine.
@Command(name = "serve", description = "Serve the crew's archive on 127.0.0.1.", mixinStandardHelpOptions = true)
final class ServeCommand implements Callable<Integer> {
    @Mixin
    private Shown shown = new Shown();

    @Mixin
    private Chosen chosen = new Chosen();

    @Option(names = "--port", paramLabel = "NUMBER", description = "the port (default: 8731, or the next free one)")
    private int port = Serving.USUAL_PORT;

    @Override
    public Integer call() throws InterruptedException {
        try (var archive = chosen.isDemo() ? chosen.open() : chosen.openOrMake();
                var progress = new TerminalProgress("reduce")) {
            archive.renew(progress).forEach(day -> shown.err().println(day + ": reduced again by the current trials"));
            Serving.untilStopped(archive, port, chosen.isDemo(), shown);
        }
        return Mile.DONE;
    }
}
