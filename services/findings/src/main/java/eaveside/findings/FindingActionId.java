package eaveside.findings;

import eaveside.kernel.Ids;
import java.util.UUID;

/** Identifies one action on a finding; made by the client, so that sending it twice records it once. */
public record FindingActionId(UUID value) {
    public static FindingActionId next() {
        return new FindingActionId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static FindingActionId of(String text) {
        return new FindingActionId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
