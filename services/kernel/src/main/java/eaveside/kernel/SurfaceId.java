package eaveside.kernel;

import java.util.UUID;

/** Identifies a surface of a site: an array, skylights, windows, a roof. */
public record SurfaceId(UUID value) implements Id {
    public static SurfaceId next() {
        return new SurfaceId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static SurfaceId of(String text) {
        return new SurfaceId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
