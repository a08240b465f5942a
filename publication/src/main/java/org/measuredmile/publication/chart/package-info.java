/// Charts as pure functions: values in SI units in, one `svg` element as text out.
///
/// Read in this order: [Scale], [Ticks], [Axis], then the charts: [Strip], [StandingTile], [RankComb],
/// [TracePlot], [LevelsPlot], [BudgetBars], [Gauge], [LinePlot], [ControlPlot]. Charts carry class names
/// and no colours, so that one drawing serves light, dark and print; every chart has a sentence for those
/// who do not see it. Each is drawn anew for the width it is shown at, never scaled.
///
/// May not know: files, clocks, frameworks, the archive, and which trial a value came from.
@NullMarked
package org.measuredmile.publication.chart;

import org.jspecify.annotations.NullMarked;
