package org.measuredmile.archive;

/// Told of long work as it goes on.
public interface Progress {
    Progress NONE = (what, done, of) -> {};

    /// @param what what is being worked on now
    void step(String what, long done, long of);
}
