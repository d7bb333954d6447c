package eaveside.web.stock;

import eaveside.inventory.Location;
import eaveside.inventory.LotLevel;
import eaveside.inventory.ReadStock;
import eaveside.inventory.SaveStockItem;
import eaveside.inventory.SetReorderPoint.ReorderPoint;
import eaveside.inventory.StockEntryFilter;
import eaveside.inventory.StockEntryLine;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.LotId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Slice;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.forms.Options;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The items of the stock: their list, the card of each, and its form with packs and reorder points. */
@Path("/stock/items")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class ItemPages extends ListResource<StockItem> {
    private static final int ENTRIES = 50;
    private static final List<Unit> US =
            List.of(Unit.PIECE, Unit.US_FLUID_OUNCE, Unit.US_GALLON, Unit.GRAIN, Unit.FOOT, Unit.POUND);
    private static final List<Unit> METRIC =
            List.of(Unit.PIECE, Unit.MILLILITER, Unit.LITER, Unit.GRAIN, Unit.METER, Unit.GRAM, Unit.KILOGRAM);

    /** The field of a location's reorder point goes on with the location's id. */
    private static final String POINT = "reorderPoint-";

    /** And so does the one that keeps what the point was when the form was first shown. */
    private static final String WAS = "was-";

    @Inject
    ReadStock readStock;

    @Inject
    SaveStockItem saveStockItem;

    /** An item in every location, and its latest entries. */
    public record ItemPage(StockItem item, List<Held> held, Slice<StockEntryLine> entries) implements Page {}

    /** The lots of an item that a location holds. */
    public record Held(Location location, List<LotLevel> lots) {}

    /**
     * The form.
     *
     * @param  locations that have a reorder point or can get one
     * @param  unit      that reorder points are typed in
     */
    public record ItemForm(Form<StockItem> form, List<Location> locations, Unit unit) implements Page {}

    @Override
    protected Listing<StockItem> list() {
        View view = viewer.view();
        Listing.Source<StockItem> items = query -> readStock.find(query.search(), query.after(), query.size());
        return Listing.of("stock.items", "/stock/items", items)
                .searched()
                .opening("name", item -> "/stock/items/" + item.id())
                .columns("code", "type")
                .column("baseUnit", item -> view.t("settings.unit", item.baseUnit()))
                .column(
                        "packs",
                        item -> item.packs().stream()
                                .map(pack -> pack.name() + ": " + view.quantity(pack.content()))
                                .collect(Collectors.joining(", ")))
                .columns("alkaline", "active")
                .action("new", "/stock/items/new");
    }

    @GET
    @Path("{id}")
    @Transactional
    public ItemPage item(
            @PathParam("id") StockItemId id,
            @QueryParam("lot") @Nullable LotId lot,
            @QueryParam("after") @Nullable String after) {
        List<Held> held = readStock.locations().stream()
                .map(location -> new Held(location, readStock.lots(location.id(), id)))
                .filter(h -> !h.lots().isEmpty())
                .toList();
        StockEntryFilter filter = new StockEntryFilter(null, null, List.of(), id, lot, null, null);
        return new ItemPage(readStock.item(id), held, readStock.entries(filter, after, ENTRIES));
    }

    @GET
    @Path("new")
    @Transactional
    public ItemForm fresh() {
        return page(viewer.fresh(StockItem.class, Map.of("type", StockType.PLAIN.name())));
    }

    @GET
    @Path("{id}/edit")
    @Transactional
    public ItemForm edit(@PathParam("id") StockItemId id) {
        Map<String, String> points = new HashMap<>();
        readStock.reorderPoints(id).forEach((location, least) -> {
            points.put(POINT + location, viewer.notation().plain(least.value()));
            points.put(WAS + location, viewer.notation().plain(least.value()));
        });
        Fields item = viewer.form(readStock.item(id)).fields();
        return page(Form.sent(StockItem.class, item.completedBy(points)));
    }

    @POST
    public Response save(Form<StockItem> form) {
        Fields fields = form.fields();
        Unit unit = unit(fields);
        StockType type = StockType.valueOf(form.chosen("type", StockType.PLAIN.name()));
        // Said even where something else is wrong as well.
        fields.made("baseUnit", () -> type.requireCounting(unit));
        List<ReorderPoint> points = reorderPoints(fields, unit);
        return named(form).in(unit).run(item -> saveStockItem.save(item, points, viewer.id()))
                ? Respond.to("/stock/items", "stock.items.saved")
                : Respond.again(fields, page(form));
    }

    /**
     * The reorder points that were typed over, zero where one was emptied. What was left as it was shown is not set again,
     * so that it does not undo what another user has set meanwhile.
     */
    private List<ReorderPoint> reorderPoints(Fields fields, Unit unit) {
        StockItemId item = new StockItemId(fields.id("id"));
        List<ReorderPoint> points = new ArrayList<>();
        for (Location location : readStock.locations()) {
            String name = POINT + location.id();
            String typed = fields.optional(name);
            if (!typed.equals(fields.optional(WAS + location.id()))) {
                Quantity least = typed.isEmpty() ? Quantity.zero(unit) : fields.quantity(name, unit);
                ReorderPoint point = fields.made(name, () -> new ReorderPoint(item, location.id(), least));
                if (point != null) {
                    points.add(point);
                }
            }
        }
        return points;
    }

    private ItemForm page(Form<StockItem> form) {
        View view = viewer.view();
        Fields fields = named(form).fields();
        List<Location> locations = readStock.locations().stream()
                .filter(location -> location.active()
                        || !fields.typed(POINT + location.id()).isEmpty())
                .toList();
        locations.forEach(location ->
                fields.called(POINT + location.id(), view.t("stock.items.reorderPoint.in", location.name())));
        return new ItemForm(form, locations, unit(fields));
    }

    /** The form with what its fields are called, and the units that there are to choose from. */
    private Form<StockItem> named(Form<StockItem> form) {
        View view = viewer.view();
        Fields fields = form.labeled("stock.items").fields();
        for (int row : fields.rows("pack")) {
            fields.called("pack-" + row + "-name", view.t("forms.in-row", view.t("stock.items.pack"), row + 1));
        }
        Set<Unit> units = new LinkedHashSet<>(view.us() ? US : METRIC);
        if (!fields.typed("baseUnit").isEmpty()) {
            units.add(unit(fields));
        }
        return form.choosing("baseUnit", Options.of(units, Unit::code, unit -> view.t("settings.unit", unit)));
    }

    /** The unit that is chosen; pieces as long as none is. */
    private static Unit unit(Fields fields) {
        return Stream.of(Unit.values())
                .filter(unit -> unit.code().equals(fields.typed("baseUnit")))
                .findFirst()
                .orElse(Unit.PIECE);
    }
}
