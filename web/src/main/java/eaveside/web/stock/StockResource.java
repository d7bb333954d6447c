package eaveside.web.stock;

import eaveside.access.Role;
import eaveside.inventory.Place;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockItem;
import eaveside.kernel.Exact;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.PlaceId;
import eaveside.kernel.Slice;
import eaveside.kernel.StockItemId;
import eaveside.ledger.Books;
import eaveside.web.Csv;
import eaveside.web.Page;
import eaveside.web.security.For;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a place holds, and the card of one item. */
@Path("/stock")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class StockResource {
    private static final int PAGE = 50;

    private final ReadStock readStock;
    private final Books books;

    @Inject
    public StockResource(ReadStock readStock, Books books) {
        this.readStock = readStock;
        this.books = books;
    }

    /**
     * @param place   the one shown; null where there is none yet
     * @param items   whether any consumable has been entered
     * @param singles canisters and brushes with how much life is left in them
     */
    public record StockPage(
            List<Place> places,
            @Nullable Place place,
            boolean items,
            List<ReadStock.Level> levels,
            Money value,
            List<Single> singles)
            implements Page {
        /** Whether the company has still to enter what the stock begins with. */
        public boolean isFirst() {
            return place == null || !items || (places.size() == 1 && levels.isEmpty());
        }

        @Override
        public String template() {
            return "stock/stock.jte";
        }
    }

    /** A canister or brush; {@code left} in per cent of what it is rated for. */
    public record Single(ReadStock.LotLevel lot, int left) {}

    /** An item in every place, and its latest entries. */
    public record ItemPage(StockItem item, List<Held> held, Slice<ReadStock.EntryLine> entries) implements Page {
        @Override
        public String template() {
            return "stock/item.jte";
        }
    }

    /** The lots of an item that a place holds. */
    public record Held(Place place, List<ReadStock.LotLevel> lots) {}

    @GET
    @Transactional
    public StockPage stock(@QueryParam("place") @DefaultValue("") String id) {
        List<Place> places = readStock.places();
        Place place = id.isEmpty() ? places.stream().findFirst().orElse(null) : readStock.place(PlaceId.of(id));
        List<ReadStock.Level> levels = place == null ? List.of() : readStock.levels(place.id());
        List<Single> singles = place == null
                ? List.of()
                : readStock.countedSingly(place.id()).stream()
                        .map(lot -> new Single(lot, left(lot)))
                        .toList();
        return new StockPage(
                places,
                place,
                !levels.isEmpty() || !readStock.items().isEmpty(),
                levels,
                Money.sum(
                        books.currency(),
                        levels.stream().map(ReadStock.Level::value).toList()),
                singles);
    }

    private static int left(ReadStock.LotLevel lot) {
        return Exact.ratio(
                        lot.quantity().value(),
                        BigDecimal.valueOf(100),
                        lot.received().value())
                .setScale(0, RoundingMode.HALF_UP)
                .intValue();
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv(@QueryParam("place") @DefaultValue("") String id) {
        List<List<String>> rows = new ArrayList<>();
        for (Place place : readStock.places()) {
            if (id.isEmpty() || place.id().toString().equals(id)) {
                for (ReadStock.Level level : readStock.levels(place.id())) {
                    rows.add(List.of(
                            place.name(),
                            level.item().code(),
                            level.item().name(),
                            level.quantity().value().toPlainString(),
                            level.quantity().unit().code(),
                            level.value().amount().toPlainString(),
                            level.minimum() == null
                                    ? ""
                                    : level.minimum().value().toPlainString()));
                }
            }
        }
        return Csv.download("stock", List.of("place", "code", "item", "quantity", "unit", "value", "minimum"), rows);
    }

    @GET
    @Path("items/{id}")
    @Transactional
    public ItemPage item(
            @PathParam("id") String id,
            @QueryParam("lot") @DefaultValue("") String lot,
            @QueryParam("after") @Nullable String after) {
        StockItem item = readStock.item(StockItemId.of(id));
        List<Held> held = readStock.places().stream()
                .map(place -> new Held(place, readStock.lots(place.id(), item.id())))
                .filter(h -> !h.lots().isEmpty())
                .toList();
        ReadStock.Filter all = ReadStock.Filter.of(item.id(), null);
        ReadStock.Filter filter =
                lot.isEmpty() ? all : new ReadStock.Filter(null, null, List.of(), item.id(), LotId.of(lot), null, null);
        return new ItemPage(item, held, readStock.entries(filter, after, PAGE));
    }
}
