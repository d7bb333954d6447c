package eaveside.web.stock;

import eaveside.access.Role;
import eaveside.inventory.InventoryRefusal;
import eaveside.inventory.Pack;
import eaveside.inventory.ReadStock;
import eaveside.inventory.SaveStockItem;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.LocationId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Refusal;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.web.Csv;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Consumables as the company keeps them: found while one types, and entered with the packs that they come in and how
 * much of them each location should hold, in the item's base unit.
 */
@Path("/stock/consumables")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class ConsumableResource {
    private static final int PAGE = 50;

    private final ReadStock readStock;
    private final SaveStockItem saveStockItem;
    private final ConsumableForm form;
    private final AuditLog auditLog;
    private final Viewer viewer;

    @Inject
    public ConsumableResource(
            ReadStock readStock, SaveStockItem saveStockItem, ConsumableForm form, AuditLog auditLog, Viewer viewer) {
        this.viewer = viewer;
        this.readStock = readStock;
        this.saveStockItem = saveStockItem;
        this.form = form;
        this.auditLog = auditLog;
    }

    /**
     * A page of the list.
     *
     * @param  csv  the address of all that was found as a file
     * @param  more the address of the next page, or null
     */
    public record ConsumablesPage(
            String search,
            List<StockItem> items,
            String csv,
            @Nullable String more) implements Page {
        @Override
        public String template() {
            return "stock/consumables.jte";
        }
    }

    @GET
    @Transactional
    public ConsumablesPage consumables(
            @QueryParam("q") @DefaultValue("") String search, @QueryParam("after") @DefaultValue("") String after) {
        List<StockItem> left = after(found(search), after);
        List<StockItem> shown = left.stream().limit(PAGE).toList();
        return new ConsumablesPage(
                search,
                shown,
                address("/stock/consumables/list.csv", search, ""),
                left.size() > PAGE
                        ? address(
                                "/stock/consumables",
                                search,
                                shown.getLast().id().toString())
                        : null);
    }

    private List<StockItem> found(String search) {
        String wanted = search.strip().toLowerCase(Locale.ROOT);
        return readStock.items().stream()
                .filter(item -> (item.code() + " " + item.name())
                        .toLowerCase(Locale.ROOT)
                        .contains(wanted))
                .toList();
    }

    /** Those behind the one last shown; all of them where it is not among them. */
    private static List<StockItem> after(List<StockItem> items, String last) {
        for (int i = 0; i < items.size(); i++) {
            if (items.get(i).id().toString().equals(last)) {
                return items.subList(i + 1, items.size());
            }
        }
        return items;
    }

    private static String address(String path, String search, String after) {
        UriBuilder address = UriBuilder.fromPath(path).queryParam("q", "{q}");
        return after.isEmpty()
                ? address.build(search).toString()
                : address.queryParam("after", "{after}").build(search, after).toString();
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv(@QueryParam("q") @DefaultValue("") String search) {
        return Csv.download(
                "consumables",
                List.of("code", "name", "type", "unit", "packs", "alkaline", "active"),
                found(search).stream()
                        .map(item -> List.of(
                                item.code(),
                                item.name(),
                                item.type().name(),
                                item.baseUnit().code(),
                                item.packs().stream()
                                        .map(pack -> pack.name() + ": "
                                                + pack.content().value().toPlainString())
                                        .collect(Collectors.joining("; ")),
                                item.alkaline() ? "yes" : "no",
                                item.active() ? "yes" : "no"))
                        .toList());
    }

    @GET
    @Path("new")
    @Transactional
    public ConsumableForm.ConsumablePage fresh() {
        return form.page(Fields.showing(
                Map.of("id", StockItemId.next().toString(), "type", StockType.PLAIN.name(), "active", "yes")));
    }

    @GET
    @Path("{id}")
    @Transactional
    public ConsumableForm.ConsumablePage edit(@PathParam("id") String id) {
        StockItem item = readStock.item(StockItemId.of(id));
        Map<String, String> values = form.values(item);
        values.put("id", item.id().toString());
        values.put("version", String.valueOf(item.version()));
        return form.page(Fields.showing(values));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(MultivaluedMap<String, String> typed) {
        Fields fields = viewer.fields(typed);
        StockItemId id = new StockItemId(fields.id("id"));
        Integer version = Versions.read(fields);
        String code = fields.text("code");
        String name = fields.text("name");
        StockType type = fields.choice("type", StockType.class);
        Unit unit = form.unit(fields, type);
        List<Pack> packs = form.packs(fields, unit);
        Map<LocationId, Quantity> reorderPoints = form.reorderPoints(fields, unit);
        boolean saved = fields.run(
                () -> saveStockItem.save(
                        new StockItem(
                                id,
                                code,
                                name,
                                type == null ? StockType.PLAIN : type,
                                unit,
                                packs,
                                fields.ticked("alkaline"),
                                fields.ticked("active"),
                                version),
                        reorderPoints),
                refusal -> meanwhile(refusal, id));
        if (!saved) {
            return Response.status(fields.status()).entity(form.page(fields)).build();
        }
        auditLog.done("stock-item.save", code);
        reorderPoints.keySet().forEach(location -> auditLog.done("stock.reorderPoint", location + "/" + id));
        return Response.seeOther(URI.create("/stock/consumables?done=stock.saved"))
                .build();
    }

    private Optional<Fields.Stored> meanwhile(Refusal refusal, StockItemId id) {
        if (refusal instanceof InventoryRefusal.Stale || refusal instanceof InventoryRefusal.IdTaken) {
            StockItem theirs = readStock.item(id);
            return Optional.of(Versions.stored(theirs.version(), form.values(theirs)));
        }
        return Optional.empty();
    }
}
