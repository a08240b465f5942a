package org.measuredmile.archive;

import org.measuredmile.archive.ledger.Ledger;

/// What came of taking a ledger in. `isNew` is false when the same bytes were there already.
public record LedgerReport(long revision, boolean isNew, Ledger ledger) {}
