package org.measuredmile.publication.chart;

/// The style of a drawing that stands alone, as a picture, where the pages' style sheets do not reach: the same tokens,
/// light and dark.
///
/// Source: the colours are those of the look's tokens.
public final class AloneStyle {
    /// The style sheet, the same bytes every time, so that a page's policy can name its hash.
    public static final String CSS = ":root{color-scheme:light dark;--paper:#F3F5F1;--ink:#15222A;--ink-2:#405059;"
            + "--ink-3:#596870;--hair:#D3DAD6;--accent:#93206B}"
            + "@media (prefers-color-scheme:dark){:root{--paper:#11181B;--ink:#E8EDE9;--ink-2:#B4C0C1;"
            + "--ink-3:#94A2A5;--hair:#2B373B;--accent:#EF92CC}}"
            + "svg{font:12px Archivo,'Liberation Sans','DejaVu Sans',sans-serif}"
            + "text{fill:var(--ink-3)}.said{fill:var(--ink)}.strong{fill:var(--ink);font-weight:600}"
            + ".mid{text-anchor:middle}.right{text-anchor:end}"
            + ".axis{fill:none;stroke:var(--ink-3)}.guide{fill:none;stroke:var(--hair)}"
            + ".speed{fill:none;stroke:var(--ink);stroke-width:1.25;stroke-linejoin:round}"
            + ".sample{fill:var(--paper);stroke:var(--ink-2);stroke-width:1.1}"
            + ".gap{fill:none;stroke:var(--ink-3);stroke-dasharray:1.5 3}"
            + ".way{fill:none;stroke:var(--ink);stroke-width:1.5;stroke-linejoin:round;stroke-linecap:round}"
            + ".way-post{fill:none;stroke:var(--ink);stroke-width:2}.way-end{fill:var(--paper);stroke:var(--ink);"
            + "stroke-width:1.5}"
            + ".run .post{fill:none;stroke:var(--ink);stroke-width:1.5}.run .dot{fill:var(--ink)}"
            + ".run .ring{fill:var(--paper);stroke:var(--ink);stroke-width:1.5}"
            + ".run.open .post{stroke-dasharray:3 2.5}"
            + ".run-ground{fill:var(--ink);fill-opacity:.06}.run .name{fill:var(--ink);font-weight:600}"
            + ".run.struck .name{text-decoration:line-through;fill:var(--ink-2)}.run .hit{fill:none}";

    private AloneStyle() {}
}
