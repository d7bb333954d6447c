package eaveside.findings;

/**
 * How pressing a finding is.
 *
 * @param  rank 1 for the least pressing
 */
public record Severity(SeverityCode code, String name, int rank) {}
