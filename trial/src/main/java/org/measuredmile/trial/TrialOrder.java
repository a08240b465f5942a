package org.measuredmile.trial;

import java.util.ArrayList;
import java.util.List;

/// The order in which trials are reduced: after every trial whose figures they use.
final class TrialOrder {
    private TrialOrder() {}

    /// The trials, each after those it uses, otherwise in the order given.
    ///
    /// Error: IllegalStateException, naming the trials, when they use one another in a circle.
    static List<Trial> byUses(List<Trial> trials) {
        var ordered = new ArrayList<Trial>();
        var waiting = new ArrayList<>(trials);
        while (!waiting.isEmpty()) {
            var ready = waiting.stream()
                    .filter(trial -> waiting.stream().noneMatch(other -> !other.equals(trial) && uses(trial, other)))
                    .findFirst()
                    .orElseThrow(() -> new IllegalStateException("trials use one another in a circle: "
                            + waiting.stream()
                                    .map(trial -> trial.declaration().id())
                                    .toList()));
            ordered.add(ready);
            waiting.remove(ready);
        }
        return ordered;
    }

    private static boolean uses(Trial trial, Trial other) {
        return trial.declaration().uses().stream()
                .anyMatch(use -> other.declaration().figure(use.figure()).isPresent());
    }
}
