package eaveside.kernel;

import java.util.UUID;

/** Identifies a soap mix. */
public record MixId(UUID value) implements Id {
    public static MixId next() {
        return new MixId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static MixId of(String text) {
        return new MixId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
