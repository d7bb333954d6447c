package eaveside.inventory;

import eaveside.access.AddUser;
import eaveside.access.NewPassword;
import eaveside.access.Role;
import eaveside.access.Username;
import eaveside.inventory.ReceiveGoods.Receipt;
import eaveside.inventory.ReceiveGoods.Received;
import eaveside.inventory.TransferStock.Transfer;
import eaveside.inventory.WriteOffStock.WriteOff;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Company;
import eaveside.ledger.Decided;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Entry;
import eaveside.ledger.EntryFilter;
import eaveside.ledger.FoundCompany;
import eaveside.ledger.Postable;
import eaveside.ledger.Posted;
import eaveside.ledger.Posting;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.testing.Bench;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.joda.money.CurrencyUnit;

/** A founded company with a store room and two vans, and the small language of the inventory's tests. */
final class StockFixture {
    static final UserId OWNER = UserId.next();
    static final LocalDate DAY = LocalDate.of(2026, 2, 10);

    final Bench bench;
    final Location store;
    final Location van;
    final Location otherVan;

    private StockFixture(Bench bench) {
        this.bench = bench;
        this.store = save(Location.store(LocationId.next(), "Store room"));
        this.van = save(Location.van(LocationId.next(), "Van 1"));
        this.otherVan = save(Location.van(LocationId.next(), "Van 2"));
    }

    static StockFixture on(Bench bench) {
        bench.employ(OWNER.value());
        bench.get(FoundCompany.class)
                .found(new Company(
                        "Gutterby Exterior Care",
                        new Company.Address("1 Ladder Lane", "Gutterby", "", "00001", "US"),
                        "office@example.com",
                        "555-0100",
                        "",
                        "USD",
                        "America/Los_Angeles",
                        Company.Measures.US,
                        LocalDate.of(2026, 1, 1)));
        return new StockFixture(bench);
    }

    static Money usd(String amount) {
        return Money.of(CurrencyUnit.USD, amount);
    }

    static Quantity gallons(String amount) {
        return Quantity.of(amount, Unit.US_GALLON);
    }

    static Quantity pieces(long amount) {
        return Quantity.of(amount, Unit.PIECE);
    }

    static Quantity grains(String amount) {
        return Quantity.of(amount, Unit.GRAIN);
    }

    UserId technician(String username) {
        UserId id = UserId.next();
        bench.get(AddUser.class)
                .add(new AddUser.NewUser(
                        id,
                        new Username(username),
                        "Technician " + username,
                        Role.TECHNICIAN,
                        new NewPassword("ladders and long poles"),
                        null));
        return id;
    }

    Location save(Location location) {
        return bench.get(SaveLocation.class).save(location, OWNER);
    }

    StockItem item(String code, StockType type, Unit unit) {
        return bench.get(SaveStockItem.class)
                .save(StockItem.of(StockItemId.next(), code, "The " + code, type, unit), OWNER);
    }

    StockItem soap(String code) {
        return item(code, StockType.CONCENTRATE, Unit.US_GALLON);
    }

    StockItem gloves(String code) {
        return item(code, StockType.PLAIN, Unit.PIECE);
    }

    static Received line(StockItem item, Quantity quantity, String cost) {
        return new Received(LotId.next(), item.id(), null, quantity, usd(cost), "");
    }

    static Received labeled(StockItem item, Quantity quantity, String cost, String label) {
        return new Received(LotId.next(), item.id(), null, quantity, usd(cost), label);
    }

    static Receipt receipt(LocalDate date, Location into, Received... lines) {
        return new Receipt(DocumentId.next(), date, into.id(), "Suds & Sons", "DN 7", List.of(lines), OWNER);
    }

    Posted receive(LocalDate date, Location into, Received... lines) {
        return bench.get(ReceiveGoods.class).receive(receipt(date, into, lines));
    }

    Posted transfer(LocalDate date, Location from, Location to, Portion... lines) {
        return bench.get(TransferStock.class)
                .transfer(new Transfer(DocumentId.next(), date, from.id(), to.id(), "", List.of(lines), OWNER));
    }

    Posted writeOff(LocalDate date, Location location, Portion... lines) {
        return bench.get(WriteOffStock.class)
                .writeOff(new WriteOff(DocumentId.next(), date, location.id(), "Spoiled", List.of(lines), OWNER));
    }

    static StockCount countOf(LocalDate date, Location location, CountedItem... lines) {
        return new StockCount(DocumentId.next(), date, location.id(), "Month's end", List.of(lines), OWNER);
    }

    Posted count(LocalDate date, Location location, CountedItem... lines) {
        return bench.get(CountStock.class).count(countOf(date, location, lines));
    }

    static Reversal reversalOf(Posted original, LocalDate date) {
        return new Reversal(DocumentId.next(), original.id(), date, "Entered wrongly", OWNER);
    }

    Posted reverse(Posted original, LocalDate date) {
        return bench.get(ReverseStockDocument.class).reverse(reversalOf(original, date));
    }

    /** Goods used as a visit's sheet uses them, on a document of the test's own. */
    record Use(DocumentId id, LocalDate date, LocationId from, List<Draw> draws, UserId by) implements Postable {}

    Drawn use(LocalDate date, Location from, Draw... draws) {
        return bench.inTransaction(() -> useWithin(date, from, draws));
    }

    Drawn useWithin(LocalDate date, Location from, Draw... draws) {
        Use use = new Use(DocumentId.next(), date, from.id(), List.of(draws), OWNER);
        Posting posting = bench.get(Posting.class);
        DrawStock draw = bench.get(DrawStock.class);
        AtomicReference<Drawn> of = new AtomicReference<>();
        posting.post("test.use", use, List.of(), day -> {
            Drawn drawn = draw.draw(from.id(), posting.postingDay(DocumentType.WRITE_OFF, day.open()), use.draws());
            of.set(drawn);
            List<Entry> entries = new ArrayList<>();
            if (!drawn.cost().isZero()) {
                entries.add(Entry.debit(AccountRole.WRITE_OFFS, drawn.cost()));
                entries.add(Entry.credit(AccountRole.INVENTORY, drawn.cost()));
            }
            return Decided.document(DocumentType.WRITE_OFF, "Used in a test", entries)
                    .then(posted -> draw.record(posted, from.id(), drawn));
        });
        return of.get();
    }

    Quantity held(Location location, StockItem item) {
        return bench.get(ReadStock.class).levels(location.id()).stream()
                .filter(l -> l.item().id().equals(item.id()))
                .map(StockLevel::quantity)
                .findFirst()
                .orElse(Quantity.zero(item.baseUnit()));
    }

    Money value(Location location, StockItem item) {
        return bench.get(ReadStock.class).levels(location.id()).stream()
                .filter(l -> l.item().id().equals(item.id()))
                .map(StockLevel::value)
                .findFirst()
                .orElse(usd("0"));
    }

    /** The balance of an account over all time so far. */
    Money balance(AccountRole account) {
        return bench.get(ReadLedger.class)
                .total(EntryFilter.of(account, LocalDate.of(2026, 1, 1), LocalDate.of(2026, 12, 31)));
    }
}
