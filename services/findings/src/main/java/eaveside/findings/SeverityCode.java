package eaveside.findings;

/** The code of a severity, such as {@code URGENT}. */
public record SeverityCode(String value) {
    public SeverityCode {
        FindingTypeCode.require("severity", value);
    }

    @Override
    public String toString() {
        return value;
    }
}
