package eaveside.findings;

import java.util.regex.Pattern;

/** The code of a kind of finding, such as {@code CRACKED_GLASS}. */
public record KindCode(String value) {
    static final Pattern SHAPE = Pattern.compile("[A-Z][A-Z0-9_]{0,39}");

    public KindCode {
        if (!SHAPE.matcher(value).matches()) {
            throw new FindingRefusal.BadCode("kind", value);
        }
    }

    @Override
    public String toString() {
        return value;
    }
}
