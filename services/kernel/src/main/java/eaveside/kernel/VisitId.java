package eaveside.kernel;

import java.util.UUID;

/** Identifies a visit. */
public record VisitId(UUID value) implements Id {
    public static VisitId next() {
        return new VisitId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static VisitId of(String text) {
        return new VisitId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
