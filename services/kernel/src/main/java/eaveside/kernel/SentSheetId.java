package eaveside.kernel;

import java.util.UUID;

/** Identifies what somebody sent as the sheet of a visit and what did not become it. */
public record SentSheetId(UUID value) implements Id {
    public static SentSheetId next() {
        return new SentSheetId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static SentSheetId of(String text) {
        return new SentSheetId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
