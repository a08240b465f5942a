/// Quantities of the trade: their kinds, units, spellings, and how they are printed.
///
/// Read in this order: [QuantityKind], [Unit], [UnitSystem], [QuantityText], [Rounding], [QuantityPrinter].
/// Everything inside the product is in the SI unit of its kind; a [Unit] is met only where a person reads or
/// writes.
///
/// May not know: files, clocks, locales, frameworks.
@NullMarked
package org.measuredmile.quantity;

import org.jspecify.annotations.NullMarked;
