package eaveside.visits;

import eaveside.costing.Effort;
import eaveside.customers.SurfaceAttribute;
import eaveside.customers.SurfaceType;
import eaveside.findings.FindingTypeCode;
import eaveside.findings.SeverityCode;
import eaveside.inventory.CountBasis;
import eaveside.inventory.Ppm;
import eaveside.inventory.WaterReading;
import eaveside.kernel.Default;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Elements;
import eaveside.kernel.FindingId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.MixId;
import eaveside.kernel.PhotoId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.ledger.Postable;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What a technician says at the end of a visit.
 *
 * @param  id          made by the phone before it sends, so that sending again changes nothing
 * @param  completedOn the day of the work; may lie in a closed month, and then posts on the first open day
 * @param  location    where the consumables came from; the signer's own van where absent
 * @param  lines       one for every planned line
 * @param  extras      work beyond the plan, and who accepted it on site
 * @param  readings    of the pure water used
 * @param  mixes       soap used, as mixed
 * @param  items       other consumables used
 * @param  count       where the location really held something else than the books say
 * @param  surfaces    of the site that were counted again
 * @param  newSurfaces of the site that nobody had listed
 */
public record JobSheet(
        DocumentId id,
        VisitId visit,
        LocalDate completedOn,
        UserId by,
        @Nullable LocationId location,
        List<DoneLine> lines,
        List<Extra> extras,
        List<Reading> readings,
        List<Used.OfMix> mixes,
        List<Used.OfBrush> brushes,
        List<Used.OfItem> items,
        @Nullable Declared count,
        Effort effort,
        List<Seen> findings,
        List<SurfaceFact.Recounted> surfaces,
        List<SurfaceFact.Found> newSurfaces,
        @Default String note)
        implements Postable {
    public JobSheet {
        lines = List.copyOf(lines);
        extras = List.copyOf(extras);
        readings = List.copyOf(readings);
        mixes = List.copyOf(mixes);
        brushes = List.copyOf(brushes);
        items = List.copyOf(items);
        findings = List.copyOf(findings);
        surfaces = List.copyOf(surfaces);
        newSurfaces = List.copyOf(newSurfaces);
        note = Texts.optional("note", note, 2000);
        Elements.requireDistinct("surfaces", surfaces, "surface", SurfaceFact::surface);
        Elements.requireDistinct("newSurfaces", newSurfaces, "surface", SurfaceFact::surface);
        Elements.requireDistinct("findings", findings, "id", Seen::id);
        if (count != null && count.document().equals(id)) {
            throw new KernelRefusal.Unfit("count.document", "{field} must be another id than that of the job sheet");
        }
    }

    /** The same where consumables of every sort, and what the site really has, come in one list each. */
    public JobSheet(
            DocumentId id,
            VisitId visit,
            LocalDate completedOn,
            UserId by,
            @Nullable LocationId location,
            List<DoneLine> lines,
            List<Extra> extras,
            List<Reading> readings,
            List<Used> used,
            @Nullable Declared count,
            Effort effort,
            List<Seen> findings,
            List<SurfaceFact> surfaces,
            String note) {
        this(
                id,
                visit,
                completedOn,
                by,
                location,
                lines,
                extras,
                readings,
                only(Used.OfMix.class, used),
                only(Used.OfBrush.class, used),
                only(Used.OfItem.class, used),
                count,
                effort,
                findings,
                only(SurfaceFact.Recounted.class, surfaces),
                only(SurfaceFact.Found.class, surfaces),
                note);
    }

    private static <T> List<T> only(Class<T> type, List<?> all) {
        return all.stream().filter(type::isInstance).map(type::cast).toList();
    }

    @Override
    public LocalDate date() {
        return completedOn;
    }

    @Override
    public String dateField() {
        return "completedOn";
    }

    @Override
    public List<DocumentId> alongWith() {
        return count == null ? List.of() : List.of(count.document());
    }

    /** Every consumable used but water. */
    public List<Used> used() {
        return Stream.of(mixes, brushes, items).<Used>flatMap(List::stream).toList();
    }

    /** What the site really has. */
    public List<SurfaceFact> surfaceFacts() {
        return Stream.of(surfaces, newSurfaces)
                .<SurfaceFact>flatMap(List::stream)
                .toList();
    }

    /** Whether goods were used or counted, so that their location must be known. */
    public boolean touchesStock() {
        return !used().isEmpty() || count != null || readings.stream().anyMatch(r -> r.canister() != null);
    }

    /** A planned line: units done, and units skipped with why. Together they make up the plan. */
    public record DoneLine(VisitLineId line, Quantity done, List<Skip> skips) {
        public DoneLine {
            notNegative("done", done);
            skips = List.copyOf(skips);
        }
    }

    /** @param  finding what was seen there, of this sheet or an earlier one of the site */
    public record Skip(
            Quantity quantity,
            SkipReason reason,
            @Default String note,
            @Nullable FindingId finding) {
        public Skip {
            positive("quantity", quantity);
            note = Texts.optional("note", note, 500);
        }
    }

    /**
     * Work beyond the plan.
     *
     * @param  surface  may be one that this sheet adds to the site
     * @param  acceptedBy who accepted it on site
     */
    public record Extra(
            VisitLineId id,
            ServiceItemId serviceItem,
            @Nullable SurfaceId surface,
            Quantity quantity,
            String acceptedBy) {
        public Extra {
            positive("quantity", quantity);
            acceptedBy = Texts.required("acceptedBy", acceptedBy, 200);
        }
    }

    /**
     * Readings of pure water by a TDS meter.
     *
     * @param  tapWater    before the resin
     * @param  pureWater   after it
     * @param  volume      of water that went through
     * @param  canister    the lot of resin that the water went through; absent where it came in a tank filled elsewhere
     * @param  serviceLine whose cost the resin is; shared by standard where absent
     */
    public record Reading(
            Ppm tapWater,
            Ppm pureWater,
            Quantity volume,
            @Nullable LotId canister,
            @Nullable ServiceLineId serviceLine) {
        public Reading {
            positive("volume", new WaterReading(tapWater, pureWater, volume).volume());
        }

        public Reading(WaterReading water, @Nullable LotId canister, @Nullable ServiceLineId serviceLine) {
            this(water.tapWater(), water.pureWater(), water.volume(), canister, serviceLine);
        }

        public WaterReading water() {
            return new WaterReading(tapWater, pureWater, volume);
        }
    }

    /** A consumable used, and whose cost it is; shared by standard where no service line is named. */
    public sealed interface Used {
        @Nullable
        ServiceLineId serviceLine();

        /** Soap as mixed: the books draw its concentrate. */
        record OfMix(MixId mix, Quantity volume, @Nullable ServiceLineId serviceLine) implements Used {
            public OfMix {
                positive("volume", volume);
            }
        }

        /**
         * A brush's life.
         *
         * @param  lot   the brush
         * @param  units cleaned with it
         */
        record OfBrush(LotId lot, Quantity units, @Nullable ServiceLineId serviceLine) implements Used {
            public OfBrush {
                positive("units", units);
            }
        }

        /** Anything counted plainly, in its base unit or a like one. */
        record OfItem(
                StockItemId item,
                Quantity quantity,
                @Nullable ServiceLineId serviceLine) implements Used {
            public OfItem {
                positive("quantity", quantity);
            }
        }
    }

    /**
     * A count difference of the location, posted before the consumables are drawn, so that nobody has to write a false
     * figure where the books hold less than was really used. The office sees it.
     *
     * @param  document of the count, made by the phone like the sheet's own
     */
    public record Declared(DocumentId document, String reason, List<Counted> counted) {
        public Declared {
            reason = Texts.required("reason", reason, 300);
            counted = List.copyOf(counted);
            if (counted.isEmpty()) {
                throw new KernelRefusal.NoRows("counted");
            }
        }
    }

    /** What was counted of an item or one of its lots: the quantity found, or the difference from the books. */
    public record Counted(StockItemId item, @Nullable LotId lot, CountBasis basis, Quantity quantity) {
        public Counted {
            if (basis == CountBasis.FOUND) {
                notNegative("quantity", quantity);
            }
        }
    }

    /** Something seen on site; its photos were stored before. */
    public record Seen(
            FindingId id,
            FindingTypeCode type,
            SeverityCode severity,
            @Nullable SurfaceId surface,
            @Default String note,
            @Default("false") boolean customerNotified,
            List<PhotoId> photos) {
        public Seen {
            photos = List.copyOf(photos);
        }
    }

    /** What the site really has. */
    public sealed interface SurfaceFact {
        SurfaceId surface();

        /** How much there is of a surface that the books know. */
        record Recounted(SurfaceId surface, Quantity extent) implements SurfaceFact {}

        /**
         * A surface that nobody had listed.
         *
         * @param  rows of an array; 0 for other types
         */
        record Found(
                SurfaceId surface,
                SurfaceType type,
                String name,
                Quantity extent,
                @Default("0") int rows,
                Map<SurfaceAttribute, Integer> attributes)
                implements SurfaceFact {
            public Found {
                name = Texts.required("name", name, 200);
                // Sorted, so that the same content always reads the same.
                attributes = Collections.unmodifiableMap(new TreeMap<>(attributes));
            }
        }
    }

    static void positive(String field, Quantity quantity) {
        if (!quantity.isPositive()) {
            throw new KernelRefusal.NotPositive(field);
        }
    }

    private static void notNegative(String field, Quantity quantity) {
        if (quantity.isNegative()) {
            throw new KernelRefusal.Negative(field);
        }
    }
}
