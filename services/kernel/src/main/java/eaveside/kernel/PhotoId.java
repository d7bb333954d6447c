package eaveside.kernel;

import java.util.UUID;

/** Identifies a photo of a finding. */
public record PhotoId(UUID value) implements Id {
    public static PhotoId next() {
        return new PhotoId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static PhotoId of(String text) {
        return new PhotoId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
