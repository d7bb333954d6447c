package eaveside.kernel;

import java.util.UUID;

/** Identifies something noticed on site. */
public record FindingId(UUID value) implements Id {
    public static FindingId next() {
        return new FindingId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static FindingId of(String text) {
        return new FindingId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
