package org.measuredmile.desk.web;

/// Somebody asked for what is not there: said on a page of our own, with the way on.
final class NotThere extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final String next;
    private final String nextWords;

    /// @param what the sentence that says what is not there
    NotThere(String what, String next, String nextWords) {
        super(what);
        this.next = next;
        this.nextWords = nextWords;
    }

    String next() {
        return next;
    }

    String nextWords() {
        return nextWords;
    }
}
