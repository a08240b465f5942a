package org.measuredmile.trial;

/// A figure of another trial that this one uses, and what stands in when there is none.
public record Use(String figure, String standIn) {}
