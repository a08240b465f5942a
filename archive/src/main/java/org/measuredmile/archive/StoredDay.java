package org.measuredmile.archive;

import org.measuredmile.recording.day.DayFolder;

/// A test day as it stands in the archive.
///
/// Shape: `folder` opens its files out of the content store, each read checked against its hash.
public record StoredDay(String id, Revision revision, DayFolder folder) {}
