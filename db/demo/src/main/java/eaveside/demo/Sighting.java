package eaveside.demo;

import eaveside.customers.SurfaceType;
import eaveside.findings.FindingTypeCode;
import eaveside.findings.SeverityCode;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a crew may notice, and what the office makes of it. */
enum Sighting {
    CRACKED(
            "CRACKED_GLASS",
            "URGENT",
            SurfaceType.ARRAY,
            "Two panels cracked in the lower row; left alone.",
            "electrician"),
    LOOSE_CLAMP("LOOSE_CLAMP", "SOON", SurfaceType.ARRAY, "End clamp moves by hand at the east edge.", "electrician"),
    CONDUIT("DAMAGED_CONDUIT", "URGENT", SurfaceType.ARRAY, "Conduit pulled apart below the array.", "electrician"),
    NEST("NEST", "NOTE", SurfaceType.ARRAY, "Old nest under the second row.", null),
    LICHEN("LICHEN", "NOTE", SurfaceType.ROOF, "Lichen on the shaded side, would not all come off.", null),
    GUTTER("BLOCKED_GUTTER", "SOON", null, "Gutter full along the back, water stands in it.", null),
    TREE("OVERHANGING_TREE", "NOTE", null, "Branches reach over the roof and keep dropping on it.", "arborist"),
    SEAL("FAILED_SEAL", "SOON", SurfaceType.SKYLIGHT, "Seal of one skylight is loose at the bottom.", "glazier");

    final FindingTypeCode type;
    final SeverityCode severity;
    final @Nullable SurfaceType where;
    final String note;
    /** The licensed trade that the customer is sent to; null where the company can do something itself. */
    final @Nullable String trade;

    Sighting(String type, String severity, @Nullable SurfaceType where, String note, @Nullable String trade) {
        this.type = new FindingTypeCode(type);
        this.severity = new SeverityCode(severity);
        this.where = where;
        this.note = note;
        this.trade = trade;
    }

    /** Those that can be seen where there are such surfaces; without the cracked panels, which have their own story. */
    static List<Sighting> possible(List<SurfaceType> types) {
        return Arrays.stream(values())
                .filter(s -> s != CRACKED && (s.where == null || types.contains(s.where)))
                .toList();
    }

    /** Work that the company could offer because of it. */
    boolean callsForWork() {
        return this == GUTTER || this == LICHEN;
    }
}
