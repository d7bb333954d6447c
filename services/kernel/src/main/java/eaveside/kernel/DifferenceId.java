package eaveside.kernel;

import java.util.UUID;

/** Identifies a difference between planned and done. */
public record DifferenceId(UUID value) implements Id {
    public static DifferenceId next() {
        return new DifferenceId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static DifferenceId of(String text) {
        return new DifferenceId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
