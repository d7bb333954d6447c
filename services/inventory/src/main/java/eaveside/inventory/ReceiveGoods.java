package eaveside.inventory;

import eaveside.inventory.internal.Catalog;
import eaveside.inventory.internal.NewLot;
import eaveside.inventory.internal.StockLedger;
import eaveside.inventory.internal.StockLedger.Movement;
import eaveside.inventory.internal.StockOnHand;
import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Shared;
import eaveside.kernel.StockItemId;
import eaveside.kernel.UserId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Decided;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Entry;
import eaveside.ledger.Lock;
import eaveside.ledger.Postable;
import eaveside.ledger.Posted;
import eaveside.ledger.Posting;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Takes goods into a location, each line as a lot with its cost; what the supplier will bill for is owed from then on. */
@Shared
public class ReceiveGoods {
    private final Posting posting;
    private final StockOnHand stockOnHand;
    private final Catalog catalog;
    private final StockLedger stock;

    @Inject
    public ReceiveGoods(Posting posting, StockOnHand stockOnHand, Catalog catalog, StockLedger stock) {
        this.posting = posting;
        this.stockOnHand = stockOnHand;
        this.catalog = catalog;
        this.stock = stock;
    }

    /**
     * A delivery.
     *
     * @param  date         that the goods came; null for today
     * @param  deliveryNote the supplier's own number; may be empty
     */
    public record Receipt(
            DocumentId id,
            @Nullable LocalDate date,
            LocationId location,
            String supplier,
            @Default String deliveryNote,
            List<Received> lines,
            UserId by)
            implements Postable {
        public Receipt {
            Check check = new Check();
            supplier = check.required("supplier", supplier, 200);
            deliveryNote = check.optional("deliveryNote", deliveryNote, 100);
            lines = List.copyOf(lines);
            check.that(!lines.isEmpty(), () -> new KernelRefusal.NoRows("lines"));
            check.done();
        }

        String summary() {
            return "Goods from " + supplier + (deliveryNote.isEmpty() ? "" : ", delivery note " + deliveryNote);
        }
    }

    /**
     * What becomes one lot. A canister or brush is one line each, counted in the grains or units it is rated for.
     *
     * @param  lot      the new lot's id, made by the client; null for one made of the receipt's id and the line's place in it
     * @param  pack     the name of the pack that the quantity counts, in pieces; null for a quantity of the item itself
     * @param  quantity above zero
     * @param  cost     of the whole line, net of recoverable tax, in the company's currency; zero for free goods
     * @param  label    batch or serial number; required for a canister or brush
     */
    public record Received(
            @Nullable LotId lot,
            StockItemId item,
            @Nullable String pack,
            Quantity quantity,
            Money cost,
            @Default String label) {
        public Received {
            Check check = new Check();
            check.value(() -> Limits.positive("quantity", quantity), quantity);
            check.value(() -> Limits.notNegative("cost", cost), cost);
            label = check.optional("label", label, 100);
            check.done();
        }

        /** The same whenever the same receipt is sent: of the document and the line's place in it, where none is named. */
        private LotId lotOf(DocumentId receipt, int line) {
            return lot != null ? lot : LotId.of(receipt, line);
        }
    }

    /**
     * Posts the receipt. Refuses items and locations that are not active, and a label that another canister or brush has.
     */
    @Transactional
    public Posted receive(Receipt receipt) {
        List<Lock> locks = List.of(stockOnHand.lockOf(receipt.location()));
        return posting.post("stock.receipt", receipt, locks, day -> {
            stockOnHand.requireActive(receipt.location());
            List<NewLot> lots = new ArrayList<>();
            List<Movement> movements = new ArrayList<>();
            List<Entry> entries = new ArrayList<>();
            Elements.each("lines", receipt.lines(), (line, i) -> {
                StockItem item = catalog.activeItem(line.item());
                Quantity quantity = baseQuantity(item, line);
                Money cost = stock.ours(line.cost());
                LotId lot = line.lotOf(receipt.id(), i);
                lots.add(new NewLot(lot, item, line.label(), day.date(), quantity, cost));
                movements.add(new Movement(item.id(), lot, receipt.location(), quantity, cost));
                entries.addAll(
                        StockLedger.money(AccountRole.INVENTORY, AccountRole.GOODS_NOT_INVOICED, cost, item.name()));
            });
            Set<Object> seen = new HashSet<>();
            Elements.each("lines", receipt.lines(), (line, i) -> stock.requireFree(lots.get(i), seen));
            return Decided.document(DocumentType.RECEIPT, receipt.summary(), entries)
                    .then(posted -> stock.record(posted, lots, movements));
        });
    }

    private static Quantity baseQuantity(StockItem item, Received line) {
        String pack = line.pack();
        Quantity quantity = pack == null ? item.inBaseUnit(line.quantity()) : item.ofPacks(pack, line.quantity());
        Limits.positive("quantity", quantity);
        if (item.type().isCountedSingly()) {
            if (line.label().isEmpty()) {
                throw new InventoryRefusal.LotNotNamed(item.name(), "label");
            }
            if (pack != null && !line.quantity().value().equals(BigDecimal.ONE)) {
                throw new InventoryRefusal.OneAtATime(item.name());
            }
        }
        return quantity;
    }
}
