package eaveside.kernel;

import java.util.UUID;

/** Identifies a line of a visit's planned scope or sheet. */
public record VisitLineId(UUID value) implements Id {
    public static VisitLineId next() {
        return new VisitLineId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static VisitLineId of(String text) {
        return new VisitLineId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
