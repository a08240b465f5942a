package org.measuredmile.desk.cli;

import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.jspecify.annotations.Nullable;
import org.measuredmile.archive.Progress;

/// Long work as a bar on standard error, when that is a terminal; silent when it is not.
final class TerminalProgress implements Progress, AutoCloseable {
    private final String task;
    private @Nullable ProgressBar bar;

    TerminalProgress(String task) {
        this.task = task;
    }

    @Override
    public void step(String what, long done, long of) {
        if (System.console() == null || !System.console().isTerminal()) {
            return;
        }
        if (bar == null) {
            bar = new ProgressBarBuilder()
                    .setTaskName(task)
                    .setInitialMax(of)
                    .setStyle(ProgressBarStyle.ASCII)
                    .build();
        }
        bar.maxHint(of).stepTo(done);
        bar.setExtraMessage(what);
    }

    @Override
    public void close() {
        if (bar != null) {
            bar.stepTo(bar.getMax());
            bar.close();
        }
    }
}
