package org.measuredmile.recording;

/// A stretch of the recording that its instrument wrote without a break: a track segment, or the whole of it.
///
/// Unit: seconds from the recording's start, both ends belonging to it.
public record Segment(double fromS, double toS) {}
