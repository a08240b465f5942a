package org.measuredmile.recording.day;

import java.util.List;
import org.measuredmile.recording.Finding;

/// What came of reading a ledger: the results that could be used, how its columns were taken, and what was noticed.
///
/// Shape: `blanks` counts lines that hold no value; they are no results and no faults.
public record LedgerRead(LedgerMapping mapping, List<LedgerResult> results, int blanks, List<Finding> findings) {
    public LedgerRead {
        results = List.copyOf(results);
        findings = List.copyOf(findings);
    }
}
