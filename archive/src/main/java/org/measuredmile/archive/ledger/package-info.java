/// Results of earlier years: a ledger's results resolved by the figures' declarations, with the uncertainty that stands
/// in for what nobody recorded.
///
/// Read in this order: [Ledger], [LedgerEntry], [EarlierYears].
@NullMarked
package org.measuredmile.archive.ledger;

import org.jspecify.annotations.NullMarked;
