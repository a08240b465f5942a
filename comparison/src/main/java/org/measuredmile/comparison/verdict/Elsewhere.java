package org.measuredmile.comparison.verdict;

/// A result under other conditions than its own, or why it cannot be brought there and what would do.
sealed interface Elsewhere {
    record Brought(Tried tried) implements Elsewhere {}

    record Unreachable(String why, String remedy) implements Elsewhere {}
}
