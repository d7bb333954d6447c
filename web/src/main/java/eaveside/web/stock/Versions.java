package eaveside.web.stock;

import eaveside.web.forms.Fields;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The version that a form of the stock started from: none for what is new, and there is none to send. */
final class Versions {
    private Versions() {}

    static @Nullable Integer read(Fields fields) {
        return isNew(fields) ? null : fields.integer("version", 0, Integer.MAX_VALUE);
    }

    static boolean isNew(Fields fields) {
        return fields.version().isEmpty();
    }

    /** What is stored always has a version, though a record that is still to be stored has none. */
    static Fields.Stored stored(@Nullable Integer version, Map<String, String> values) {
        return new Fields.Stored(version == null ? 0 : version, values);
    }
}
