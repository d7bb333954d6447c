package eaveside.findings;

/**
 * How severe a finding is.
 *
 * @param  rank 1 for the least severe
 */
public record Severity(SeverityCode code, String name, int rank) {}
