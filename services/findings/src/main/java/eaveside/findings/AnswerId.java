package eaveside.findings;

import eaveside.kernel.Ids;
import java.util.UUID;

/** Identifies one answer to a finding; made by the client, so that sending it twice records it once. */
public record AnswerId(UUID value) {
    public static AnswerId next() {
        return new AnswerId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static AnswerId of(String text) {
        return new AnswerId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
