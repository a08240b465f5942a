package org.measuredmile.desk;

import java.util.List;
import java.util.function.Supplier;
import org.measuredmile.comparison.standing.Workers;

/// The machine's processors as workers.
public enum Machine implements Workers {
    PROCESSORS;

    @Override
    public int count() {
        return Runtime.getRuntime().availableProcessors();
    }

    @Override
    public <T> List<T> all(List<Supplier<T>> parts) {
        return parts.parallelStream().map(Supplier::get).toList();
    }
}
