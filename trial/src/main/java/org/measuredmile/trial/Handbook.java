package org.measuredmile.trial;

import java.util.List;

/// The trial's page in the method handbook, as prose: what is measured, by which formula, in which steps, from which
/// sources, with a worked example that is also a test.
///
/// Shape: plain text; a step or a source each its own paragraph.
public record Handbook(
        String measurand, String formula, List<String> steps, List<String> sources, String example, String limits) {
    public Handbook {
        steps = List.copyOf(steps);
        sources = List.copyOf(sources);
    }
}
