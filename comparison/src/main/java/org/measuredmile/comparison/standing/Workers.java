package org.measuredmile.comparison.standing;

import java.util.List;
import java.util.function.Supplier;

/// Who computes the parts of a long piece of work; how many there are changes no result.
public interface Workers {
    /// One after the other, on the thread that asks.
    Workers ONE = new Workers() {
        @Override
        public int count() {
            return 1;
        }

        @Override
        public <T> List<T> all(List<Supplier<T>> parts) {
            return parts.stream().map(Supplier::get).toList();
        }
    };

    /// Into how many parts it is worth dividing.
    int count();

    /// What each part comes to, in their order.
    <T> List<T> all(List<Supplier<T>> parts);
}
