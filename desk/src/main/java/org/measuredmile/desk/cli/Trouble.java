package org.measuredmile.desk.cli;

/// Something a command cannot go on with: what, where, and what to do, in one line.
final class Trouble extends RuntimeException {
    Trouble(String message) {
        super(message);
    }
}
