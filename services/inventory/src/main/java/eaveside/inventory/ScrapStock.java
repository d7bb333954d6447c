package eaveside.inventory;

import eaveside.inventory.internal.Shelf;
import eaveside.inventory.internal.Shelves;
import eaveside.inventory.internal.StockLedger;
import eaveside.inventory.internal.StockLedger.Movement;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.PlaceId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.DocumentKind;
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
public class ScrapStock {
    private final PostDocument postDocument;
    private final Shelves shelves;
    private final StockLedger stock;

    @Inject
    public ScrapStock(PostDocument postDocument, Shelves shelves, StockLedger stock) {
        this.postDocument = postDocument;
        this.shelves = shelves;
        this.stock = stock;
    }

    /** What is thrown away, where it lay, and why. */
    public record Scrap(DocumentId id, LocalDate date, PlaceId place, String reason, List<Portion> lines, UserId by) {
        public Scrap {
            reason = Texts.required("reason", reason, 300);
            lines = List.copyOf(lines);
            if (lines.isEmpty()) {
                throw new InventoryRefusal.NothingEntered();
            }
        }
    }

    /** Posts the scrapping at the cost of the lots; refuses more than the place holds on its day and every later one. */
    @Transactional
    public Posted scrap(Scrap scrap) {
        LocalDate open = postDocument.openDay(scrap.date());
        shelves.lock(List.of(scrap.place()));
        Fingerprint fingerprint = Fingerprint.of(scrap);
        Optional<Posted> before = postDocument.alreadyPosted(scrap.id(), fingerprint);
        if (before.isPresent()) {
            return before.get();
        }
        Shelf shelf = shelves.load(
                scrap.place(),
                postDocument.postingDay(DocumentKind.SCRAP, open),
                scrap.lines().stream().map(Portion::item).toList());
        List<Movement> movements = new ArrayList<>();
        List<Entry> entries = new ArrayList<>();
        for (Drawn.DrawnLine line : shelf.takePortions(scrap.lines())) {
            movements.add(Movement.out(scrap.place(), line));
            entries.addAll(StockLedger.money(
                    AccountRole.SCRAPPED_STOCK,
                    AccountRole.INVENTORY,
                    line.cost(),
                    shelf.item(line.draw().item()).name()));
        }
        Posted posted = postDocument.post(NewDocument.of(
                scrap.id(),
                DocumentKind.SCRAP,
                scrap.date(),
                "Scrapped in " + shelf.place() + ": " + scrap.reason(),
                scrap.by(),
                fingerprint,
                entries));
        stock.record(posted, movements);
        return posted;
    }
}
