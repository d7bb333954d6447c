package eaveside.inventory;

import eaveside.inventory.internal.LotsOnHand;
import eaveside.inventory.internal.StockLedger;
import eaveside.inventory.internal.StockLedger.Movement;
import eaveside.inventory.internal.StockOnHand;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.LocationId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Entry;
import eaveside.ledger.NewDocument;
import eaveside.ledger.PostDocument;
import eaveside.ledger.Posted;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Writes off goods that are thrown away: spoiled soap, a spent canister, a worn brush. */
@Dependent
public class WriteOffStock {
    private final PostDocument postDocument;
    private final StockOnHand stockOnHand;
    private final StockLedger stock;

    @Inject
    public WriteOffStock(PostDocument postDocument, StockOnHand stockOnHand, StockLedger stock) {
        this.postDocument = postDocument;
        this.stockOnHand = stockOnHand;
        this.stock = stock;
    }

    /** What is thrown away, where it lay, and why. */
    public record WriteOff(
            DocumentId id, LocalDate date, LocationId location, String reason, List<Portion> lines, UserId by) {
        public WriteOff {
            reason = Texts.required("reason", reason, 300);
            lines = List.copyOf(lines);
            if (lines.isEmpty()) {
                throw new InventoryRefusal.NothingEntered();
            }
        }
    }

    /** Posts the writing off at the cost of the lots; refuses more than the location holds on its day and every later one. */
    @Transactional
    public Posted writeOff(WriteOff writeOff) {
        LocalDate open = postDocument.openDay(writeOff.date());
        stockOnHand.lock(List.of(writeOff.location()));
        Fingerprint fingerprint = Fingerprint.of(writeOff);
        Optional<Posted> before = postDocument.alreadyPosted(writeOff.id(), fingerprint);
        if (before.isPresent()) {
            return before.get();
        }
        LotsOnHand lotsOnHand = stockOnHand.load(
                writeOff.location(),
                postDocument.postingDay(DocumentType.WRITE_OFF, open),
                writeOff.lines().stream().map(Portion::item).toList());
        List<Movement> movements = new ArrayList<>();
        List<Entry> entries = new ArrayList<>();
        for (Drawn.DrawnLine line : lotsOnHand.takePortions(writeOff.lines())) {
            movements.add(Movement.out(writeOff.location(), line));
            entries.addAll(StockLedger.money(
                    AccountRole.WRITE_OFFS,
                    AccountRole.INVENTORY,
                    line.cost(),
                    lotsOnHand.item(line.draw().item()).name()));
        }
        Posted posted = postDocument.post(NewDocument.of(
                writeOff.id(),
                DocumentType.WRITE_OFF,
                writeOff.date(),
                "Scrapped in " + lotsOnHand.location() + ": " + writeOff.reason(),
                writeOff.by(),
                fingerprint,
                entries));
        stock.record(posted, movements);
        return posted;
    }
}
