package org.measuredmile.recording.check;

/// A stretch of a recording in which another one of the day, which is searched for runs too, says what the bike did:
/// whoever searches both leaves this stretch out, so that no run is found twice.
///
/// Unit: seconds on the recording's own time base.
public record Beside(String file, String with, double fromS, double toS) {}
