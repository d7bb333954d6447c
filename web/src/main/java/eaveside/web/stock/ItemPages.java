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
import eaveside.kernel.LocationId;
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
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The items of the stock: their list, the card of each, and its form with packs and reorder points. */
@Path("/stock/items")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class ItemPages extends ListResource<StockItem> {
    private static final String TEXTS = "stock.items";
    private static final int ENTRIES = 50;
    private static final List<Unit> US =
            List.of(Unit.PIECE, Unit.US_FLUID_OUNCE, Unit.US_GALLON, Unit.GRAIN, Unit.FOOT, Unit.POUND);
    private static final List<Unit> METRIC =
            List.of(Unit.PIECE, Unit.MILLILITER, Unit.LITER, Unit.GRAIN, Unit.METER, Unit.GRAM, Unit.KILOGRAM);

    @Inject
    ReadStock readStock;

    @Inject
    SaveStockItem saveStockItem;

    /** An item in every location, and its latest entries. */
    public record ItemPage(StockItem item, List<Held> held, Slice<StockEntryLine> entries) implements Page {
        @Override
        public String template() {
            return "stock/item.jte";
        }
    }

    /** The lots of an item that a location holds. */
    public record Held(Location location, List<LotLevel> lots) {}

    /**
     * The form.
     *
     * @param  packs     the numbers of the packs' rows
     * @param  locations that have a reorder point or can get one
     * @param  unit      that reorder points are typed in
     */
    public record ItemForm(Form<StockItem> form, List<Integer> packs, List<Location> locations, Unit unit)
            implements Page {
        @Override
        public String template() {
            return "stock/item-form.jte";
        }

        /** The name of the field that holds a location's reorder point. */
        public String reorderPoint(LocationId location) {
            return ItemPages.reorderPoint(location);
        }

        /** The name of the field that keeps what the reorder point was when the form was first shown. */
        public String was(LocationId location) {
            return ItemPages.was(location);
        }
    }

    @Override
    protected Listing<StockItem> list() {
        View view = viewer.view();
        Listing.Source<StockItem> items = query -> readStock.find(query.search(), query.after(), query.size());
        return Listing.of(TEXTS, "/stock/items", items)
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
        return page(viewer.form(
                StockItem.class,
                Map.of("id", StockItemId.next().toString(), "type", StockType.PLAIN.name(), "active", "yes")));
    }

    @GET
    @Path("{id}/edit")
    @Transactional
    public ItemForm edit(@PathParam("id") StockItemId id) {
        Fields item = viewer.form(readStock.item(id)).fields();
        Map<String, String> reorderPoints = new LinkedHashMap<>();
        readStock.reorderPoints(id).forEach((location, least) -> {
            String typed = viewer.notation().plain(least.value());
            reorderPoints.put(reorderPoint(location), typed);
            reorderPoints.put(was(location), typed);
        });
        return page(Form.sent(StockItem.class, item.completedBy(reorderPoints)));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(Form<StockItem> form) {
        Unit unit = unit(form);
        // Said even where something else is wrong as well.
        form.fields()
                .made(
                        "baseUnit",
                        () -> StockType.valueOf(form.chosen("type", StockType.PLAIN.name()))
                                .requireCounting(unit));
        List<ReorderPoint> reorderPoints = reorderPoints(form.fields(), unit);
        return named(form).in(unit).run(item -> saveStockItem.save(item, reorderPoints, viewer.id()))
                ? Respond.to("/stock/items", "stock.items.saved")
                : Respond.again(form.fields(), page(form));
    }

    /**
     * The reorder points that were typed over, zero where one was emptied. What was left as it was shown is not set again,
     * so that it does not undo what another user has set meanwhile.
     */
    private List<ReorderPoint> reorderPoints(Fields fields, Unit unit) {
        StockItemId item = new StockItemId(fields.id("id"));
        List<ReorderPoint> reorderPoints = new ArrayList<>();
        for (Location location : readStock.locations()) {
            String name = reorderPoint(location.id());
            String typed = fields.optional(name);
            if (!typed.equals(fields.optional(was(location.id())))) {
                Quantity least = typed.isEmpty() ? Quantity.zero(unit) : fields.quantity(name, unit);
                ReorderPoint point = fields.made(name, () -> new ReorderPoint(item, location.id(), least));
                if (point != null) {
                    reorderPoints.add(point);
                }
            }
        }
        return reorderPoints;
    }

    private ItemForm page(Form<StockItem> form) {
        View view = viewer.view();
        Fields fields = named(form).fields();
        List<Location> locations = readStock.locations().stream()
                .filter(location -> location.active()
                        || !fields.typed(reorderPoint(location.id())).isEmpty())
                .toList();
        locations.forEach(location ->
                fields.called(reorderPoint(location.id()), view.t("stock.items.reorderPoint.in", location.name())));
        List<Integer> packs = new ArrayList<>(fields.rows("pack"));
        if (packs.isEmpty() || !fields.hasErrors()) {
            packs.add(packs.isEmpty() ? 0 : packs.getLast() + 1);
        }
        return new ItemForm(form, packs, locations, unit(form));
    }

    /** The form with what its fields are called, and the units that there are to choose from. */
    private Form<StockItem> named(Form<StockItem> form) {
        View view = viewer.view();
        Fields fields = form.labeled(TEXTS).fields();
        for (int row : fields.rows("pack")) {
            fields.called("pack-" + row + "-name", view.t("forms.in-row", view.t("stock.items.pack"), row + 1));
        }
        Map<String, String> units = new LinkedHashMap<>();
        Stream.concat(
                        (view.us() ? US : METRIC).stream(),
                        Stream.of(unit(form)).filter(unit -> unit.code().equals(fields.typed("baseUnit"))))
                .forEach(unit -> units.put(unit.code(), view.t("settings.unit", unit)));
        return form.choosing("baseUnit", units);
    }

    /** The unit that is chosen; pieces as long as none is. */
    private static Unit unit(Form<StockItem> form) {
        String chosen = form.fields().typed("baseUnit");
        return Stream.of(Unit.values())
                .filter(unit -> unit.code().equals(chosen))
                .findFirst()
                .orElse(Unit.PIECE);
    }

    private static String reorderPoint(LocationId location) {
        return "reorderPoint-" + location;
    }

    private static String was(LocationId location) {
        return "was-" + location;
    }
}
