package org.measuredmile.desk;

import org.measuredmile.archive.Archive;

/// The way from the command line to the web app, found by the service loader, so that short commands start without the
/// web app's libraries.
public interface WebDoor {
    /// Serves an archive's pages on 127.0.0.1; comes back once they can be asked for.
    Served open(Archive archive, Wish wish);

    /// How it is wished to be served.
    ///
    /// Shape: `demo` when everything in the archive is invented and every page has to say so.
    record Wish(int port, boolean demo) {}

    /// An app that is serving; closing it ends that.
    interface Served extends AutoCloseable {
        int port();

        @Override
        void close();
    }
}
