package clearbed.calc;

/** A scalar of a YAML file and the line it stands on, from 1. */
record Words(String text, int line) {}
