package eaveside.kernel;

import java.util.UUID;

/** Identifies a customer's building or field. */
public record SiteId(UUID value) implements Id {
    public static SiteId next() {
        return new SiteId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static SiteId of(String text) {
        return new SiteId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
