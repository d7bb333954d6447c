package eaveside.findings;

import eaveside.kernel.KernelRefusal;
import java.util.regex.Pattern;

/** The code of a type of finding, such as {@code CRACKED_GLASS}. */
public record FindingTypeCode(String value) {
    private static final Pattern SHAPE = Pattern.compile("[A-Z][A-Z0-9_]{0,39}");

    public FindingTypeCode {
        require("type", value);
    }

    /** Refuses what is no code of this module's lists. */
    static void require(String field, String code) {
        if (!SHAPE.matcher(code).matches()) {
            throw new KernelRefusal.Unfit(
                    field,
                    "{field} takes capital letters, digits and underscores, 40 at most, a letter first, not '" + code
                            + "'");
        }
    }

    @Override
    public String toString() {
        return value;
    }
}
