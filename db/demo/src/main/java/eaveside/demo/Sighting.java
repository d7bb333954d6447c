package eaveside.demo;

import eaveside.customers.SurfaceKind;
import eaveside.findings.KindCode;
import eaveside.findings.SeverityCode;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a crew may notice, and what the office makes of it. */
enum Sighting {
    CRACKED(
            "CRACKED_GLASS",
            "URGENT",
            SurfaceKind.ARRAY,
            "Two panels cracked in the lower row; left alone.",
            "electrician"),
    LOOSE_CLAMP("LOOSE_CLAMP", "SOON", SurfaceKind.ARRAY, "End clamp moves by hand at the east edge.", "electrician"),
    CONDUIT("DAMAGED_CONDUIT", "URGENT", SurfaceKind.ARRAY, "Conduit pulled apart below the array.", "electrician"),
    NEST("NEST", "NOTE", SurfaceKind.ARRAY, "Old nest under the second row.", null),
    LICHEN("LICHEN", "NOTE", SurfaceKind.ROOF, "Lichen on the shaded side, would not all come off.", null),
    GUTTER("BLOCKED_GUTTER", "SOON", null, "Gutter full along the back, water stands in it.", null),
    TREE("OVERHANGING_TREE", "NOTE", null, "Branches reach over the roof and keep dropping on it.", "tree surgeon"),
    SEAL("FAILED_SEAL", "SOON", SurfaceKind.SKYLIGHT, "Seal of one skylight is loose at the bottom.", "glazier");

    final KindCode kind;
    final SeverityCode severity;
    final @Nullable SurfaceKind where;
    final String note;
    /** The licensed trade that the customer is sent to; null where the company can do something itself. */
    final @Nullable String trade;

    Sighting(String kind, String severity, @Nullable SurfaceKind where, String note, @Nullable String trade) {
        this.kind = new KindCode(kind);
        this.severity = new SeverityCode(severity);
        this.where = where;
        this.note = note;
        this.trade = trade;
    }

    /** Those that can be seen where there are such surfaces; without the cracked panels, which have their own story. */
    static List<Sighting> possible(List<SurfaceKind> kinds) {
        return Arrays.stream(values())
                .filter(s -> s != CRACKED && (s.where == null || kinds.contains(s.where)))
                .toList();
    }

    /** Work that the company could offer because of it. */
    boolean callsForWork() {
        return this == GUTTER || this == LICHEN;
    }
}
