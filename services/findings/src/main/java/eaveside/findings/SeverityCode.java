package eaveside.findings;

/** The code of a severity, such as {@code URGENT}. */
public record SeverityCode(String value) {
    public SeverityCode {
        if (!FindingTypeCode.SHAPE.matcher(value).matches()) {
            throw new FindingRefusal.BadCode("severity", value);
        }
    }

    @Override
    public String toString() {
        return value;
    }
}
