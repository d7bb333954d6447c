package eaveside.web.stock;

import eaveside.inventory.Location;
import eaveside.inventory.LotLevel;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockLevel;
import eaveside.kernel.Exact;
import eaveside.kernel.LocationId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.ledger.Books;
import eaveside.web.Csv;
import eaveside.web.Page;
import eaveside.web.forms.PageResource;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a location holds. */
@Path("/stock")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class StockPages extends PageResource {
    @Inject
    ReadStock readStock;

    @Inject
    Books books;

    /**
     * The stock of one location.
     *
     * @param  location the one shown; null where there is none yet
     * @param  items    whether any item has been entered
     * @param  singles  canisters and brushes
     */
    public record StockPage(
            List<Location> locations,
            @Nullable Location location,
            boolean items,
            List<StockLevel> levels,
            Money value,
            List<LotLevel> singles)
            implements Page {
        /** Whether the company has still to enter what the stock begins with. */
        public boolean isFirst() {
            return location == null || !items || (locations.size() == 1 && levels.isEmpty());
        }

        /** What is left of a canister or brush, in percent of what it is rated for. */
        public int left(LotLevel single) {
            BigDecimal rated = single.received().value();
            return Exact.ratio(single.quantity().value(), BigDecimal.valueOf(100), rated)
                    .setScale(0, RoundingMode.HALF_UP)
                    .intValue();
        }
    }

    @GET
    @Transactional
    public StockPage stock(@QueryParam("location") @Nullable LocationId id) {
        List<Location> locations = readStock.locations();
        Location location = id == null ? locations.stream().findFirst().orElse(null) : readStock.location(id);
        List<StockLevel> levels = location == null ? List.of() : readStock.levels(location.id());
        return new StockPage(
                locations,
                location,
                !levels.isEmpty() || !readStock.items().isEmpty(),
                levels,
                Money.sum(
                        books.currency(), levels.stream().map(StockLevel::value).toList()),
                location == null ? List.of() : readStock.countedSingly(location.id()));
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv(@QueryParam("location") @Nullable LocationId id) {
        List<List<String>> rows = readStock.locations().stream()
                .filter(location -> id == null || location.id().equals(id))
                .flatMap(location -> readStock.levels(location.id()).stream().map(level -> cells(location, level)))
                .toList();
        return Csv.download(
                "stock", List.of("location", "code", "item", "quantity", "unit", "value", "reorderPoint"), rows);
    }

    private static List<String> cells(Location location, StockLevel level) {
        Quantity reorderPoint = level.reorderPoint();
        return List.of(
                location.name(),
                level.item().code(),
                level.item().name(),
                level.quantity().value().toPlainString(),
                level.quantity().unit().code(),
                level.value().amount().toPlainString(),
                reorderPoint == null ? "" : reorderPoint.value().toPlainString());
    }
}
