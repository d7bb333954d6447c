package eaveside.visits.internal;

import eaveside.catalog.Catalog;
import eaveside.inventory.Consumption;
import eaveside.inventory.CountStock;
import eaveside.inventory.CountedItem;
import eaveside.inventory.Draw;
import eaveside.inventory.DrawStock;
import eaveside.inventory.Drawn;
import eaveside.inventory.InventoryRefusal;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockCount;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.Elements;
import eaveside.kernel.Elements.Origin;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Refusal;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Shared;
import eaveside.kernel.StockItemId;
import eaveside.ledger.CostType;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Posted;
import eaveside.ledger.Posting;
import eaveside.visits.JobSheet;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Takes what a sheet used out of the van: counts first where the sheet says so, draws, and enters it when posted. */
@Shared
public class SheetConsumption {
    // What the sheet calls the fields of a draw.
    private static final Map<String, String> OF_READING =
            Map.of("lot", "canister", "quantity", "volume", "reading", "pureWater");

    private static final Map<String, String> OF_MIX = Map.of("item", "mix", "quantity", "volume");

    private static final Map<String, String> OF_ITEM = Map.of("lot", "item");

    private static final Map<String, String> OF_BRUSH = Map.of("item", "lot", "quantity", "units");

    private final ReadStock readStock;
    private final CountStock countStock;
    private final DrawStock drawStock;
    private final Posting posting;
    private final EarlierSheets earlierSheets;
    private final Catalog catalog;

    @Inject
    public SheetConsumption(
            ReadStock readStock,
            CountStock countStock,
            DrawStock drawStock,
            Posting posting,
            EarlierSheets earlierSheets,
            Catalog catalog) {
        this.readStock = readStock;
        this.countStock = countStock;
        this.drawStock = drawStock;
        this.posting = posting;
        this.earlierSheets = earlierSheets;
        this.catalog = catalog;
    }

    /**
     * A draw and the service line that the technician named for it.
     *
     * @param  origin what on the sheet says so
     */
    public record Use(Draw draw, @Nullable ServiceLineId line, Origin origin) {}

    /**
     * What was taken for the uses, with its cost.
     *
     * @param  notBefore the sheet posts on this day or later: goods that a count found, or a reversed sheet gave back, are there
     *                  from then on
     */
    public record Taken(
            @Nullable LocationId location,
            List<Use> uses,
            @Nullable Drawn drawn,
            LocalDate notBefore) {
        /** The canisters that worked longer than the books had estimated. */
        public List<Drawn.Overrun> overruns() {
            return drawn == null ? List.of() : drawn.overruns();
        }

        /** Adds the cost of each use to the lines whose it is. */
        public void addTo(SheetCost cost, LineShares shares) {
            for (int i = 0; drawn != null && i < uses.size(); i++) {
                Use use = uses.get(i);
                shares.share(drawn.costOf(i), use.draw(), use.line())
                        .forEach((line, amount) -> cost.add(line, CostType.CONSUMABLES, amount));
            }
        }
    }

    /** What the sheet used, as draws of stock; refuses what is to be the cost of work that the visit does not have. */
    public List<Use> uses(JobSheet sheet, LineShares shares) {
        List<Use> uses = new ArrayList<>();
        Elements.each("readings", sheet.readings(), (reading, i) -> {
            LotId canister = reading.canister();
            if (canister == null && reading.serviceLine() != null) {
                catalog.line(reading.serviceLine()); // nothing is drawn, so it may be any
            } else if (canister != null) {
                shares.requireServed(reading.serviceLine());
                StockItemId resin = item(canister, StockType.RESIN, "canister");
                Draw draw = Consumption.ofCanister(resin, canister, reading.water());
                uses.add(new Use(draw, reading.serviceLine(), Origin.of("readings", i, OF_READING)));
            }
        });
        Elements.each("mixes", sheet.mixes(), (mix, i) -> {
            shares.requireServed(mix.serviceLine());
            Draw draw = Consumption.ofMix(readStock.mix(mix.mix()), mix.volume());
            uses.add(new Use(draw, mix.serviceLine(), Origin.of("mixes", i, OF_MIX)));
        });
        Elements.each("brushes", sheet.brushes(), (brush, i) -> {
            shares.requireServed(brush.serviceLine());
            StockItemId item = item(brush.lot(), StockType.BRUSH, "lot");
            Draw draw = Consumption.ofBrush(item, brush.lot(), brush.units());
            uses.add(new Use(draw, brush.serviceLine(), Origin.of("brushes", i, OF_BRUSH)));
        });
        Elements.each("items", sheet.items(), (item, i) -> {
            shares.requireServed(item.serviceLine());
            Draw draw = new Draw(item.item(), null, item.quantity());
            uses.add(new Use(draw, item.serviceLine(), Origin.of("items", i, OF_ITEM)));
        });
        return uses;
    }

    private StockItemId item(LotId lot, StockType type, String field) {
        StockItem item = readStock.item(readStock.lot(lot).item());
        if (item.type() != type) {
            throw new InventoryRefusal.NotOfType(item.name(), type, field);
        }
        return item.id();
    }

    /** What is refused of the count is told where the sheet says it. */
    private Posted counted(StockCount count) {
        try {
            return Elements.within("lines", "count.counted", () -> countStock.countWithin(count));
        } catch (Refusal refusal) {
            throw refusal.called("id", "count.document");
        }
    }

    /**
     * Posts the declared count, then draws; the location stays locked from the one to the other. A sheet entered again draws
     * what its reversed forerunner gave back, so it posts no earlier than that reversal.
     */
    public Taken take(JobSheet sheet, @Nullable LocationId location, List<Use> uses) {
        if (location == null) {
            return new Taken(null, uses, null, sheet.completedOn());
        }
        LocalDate notBefore = later(sheet.completedOn(), earlierSheets.lastReversalOf(sheet.visit()));
        JobSheet.Declared count = sheet.count();
        if (count != null) {
            List<CountedItem> counted = new ArrayList<>();
            Elements.each(
                    "count.counted",
                    count.counted(),
                    (line, i) ->
                            counted.add(new CountedItem(line.item(), line.lot(), line.basis(), line.quantity(), null)));
            StockCount command = new StockCount(
                    count.document(), sheet.completedOn(), location, count.reason(), counted, sheet.by());
            Posted posted = counted(command);
            notBefore = later(notBefore, posted.postingDate());
        }
        List<Draw> draws = uses.stream().map(Use::draw).toList();
        if (draws.isEmpty()) {
            return new Taken(location, uses, null, sheet.completedOn());
        }
        LocalDate day = posting.postingDay(DocumentType.JOB_SHEET, notBefore);
        List<Origin> origins = uses.stream().map(Use::origin).toList();
        Drawn drawn = Elements.of("draws", origins, () -> drawStock.draw(location, day, draws));
        return new Taken(location, uses, drawn, notBefore);
    }

    private static LocalDate later(LocalDate one, @Nullable LocalDate other) {
        return other != null && other.isAfter(one) ? other : one;
    }

    /** Enters what was taken under the posted sheet. */
    public void record(Posted sheet, Taken taken) {
        if (taken.location() != null && taken.drawn() != null) {
            drawStock.record(sheet, taken.location(), taken.drawn());
        }
    }
}
