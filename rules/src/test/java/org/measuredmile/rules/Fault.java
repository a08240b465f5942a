package org.measuredmile.rules;

/// One breach of a rule, where it stands and what mends it.
record Fault(String rule, String path, int line, String what, String remedy) {
    @Override
    public String toString() {
        return path + ":" + line + ": " + what + "; " + remedy;
    }
}
