package org.measuredmile.archive.ledger;

import java.time.LocalDate;
import java.util.List;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.recording.day.LedgerResult;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.FigureSpec;

/// A result of earlier years beside the figure it is of, with a stated prior uncertainty.
///
/// Unit: budget and uncertainty in the figure's SI unit.
/// Shape: `ledger` names the file; `variant` is the written one completed by the trial's usual values; `runs` is how
/// many
/// runs it is the mean of, 1 when nobody wrote it down.
public record LedgerEntry(
        String ledger,
        LedgerResult result,
        FigureSpec figure,
        Variant variant,
        LocalDate date,
        int runs,
        List<Contribution> budget) {
    public LedgerEntry {
        budget = List.copyOf(budget);
    }

    /// The value in SI.
    public double value() {
        return result.si();
    }

    /// What another day, or a better kept record, might have given.
    public Uncertainty anyDay() {
        return new Budget(budget).around(result.si());
    }
}
