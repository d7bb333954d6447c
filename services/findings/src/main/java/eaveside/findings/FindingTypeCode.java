package eaveside.findings;

import java.util.regex.Pattern;

/** The code of a type of finding, such as {@code CRACKED_GLASS}. */
public record FindingTypeCode(String value) {
    static final Pattern SHAPE = Pattern.compile("[A-Z][A-Z0-9_]{0,39}");

    public FindingTypeCode {
        if (!SHAPE.matcher(value).matches()) {
            throw new FindingRefusal.BadCode("type", value);
        }
    }

    @Override
    public String toString() {
        return value;
    }
}
