package eaveside.web.stock;

import eaveside.access.Role;
import eaveside.inventory.Pack;
import eaveside.inventory.ReadStock;
import eaveside.inventory.SaveStockItem;
import eaveside.inventory.SetReorderPoint;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.LocationId;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.web.Json;
import eaveside.web.Json.Measured;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Consumables, and how much of one a location should hold, for scripts. */
@Path("/api/stock")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE})
@Tag(name = "Stock")
public class StockItemsApi {
    private final ReadStock readStock;
    private final SaveStockItem saveStockItem;
    private final SetReorderPoint setReorderPoint;
    private final AuditLog auditLog;

    @Inject
    public StockItemsApi(
            ReadStock readStock, SaveStockItem saveStockItem, SetReorderPoint setReorderPoint, AuditLog auditLog) {
        this.readStock = readStock;
        this.saveStockItem = saveStockItem;
        this.setReorderPoint = setReorderPoint;
        this.auditLog = auditLog;
    }

    /** @param  content of one pack: sent in the item's base unit or one like it, answered in the base unit */
    public record Packed(@Nullable String name, @Nullable Measured content) {}

    /**
     * A consumable.
     *
     * @param  type     PLAIN, CONCENTRATE, RESIN or BRUSH
     * @param  baseUnit that it is kept in, a code of UN/ECE Recommendation 20; fixed, with the type, once there is a lot
     * @param  alkaline false where absent
     * @param  active   true where absent
     * @param  version  as read; absent for a new one
     */
    public record Item(
            @Nullable String id,
            @Nullable String code,
            @Nullable String name,
            @Nullable String type,
            @Nullable String baseUnit,
            @Nullable List<Packed> packs,
            @Nullable Boolean alkaline,
            @Nullable Boolean active,
            @Nullable Integer version) {
        static Item of(StockItem item) {
            return new Item(
                    item.id().toString(),
                    item.code(),
                    item.name(),
                    item.type().name(),
                    item.baseUnit().code(),
                    item.packs().stream()
                            .map(pack -> new Packed(pack.name(), Measured.of(pack.content())))
                            .toList(),
                    item.alkaline(),
                    item.active(),
                    item.version());
        }

        StockItem read(StockItemId item) {
            return new StockItem(
                    item,
                    Json.required("code", code),
                    Json.required("name", name),
                    Json.choice("type", StockType.class, type),
                    Unit.ofCode(Json.required("baseUnit", baseUnit)),
                    packs == null ? List.of() : packs.stream().map(Item::pack).toList(),
                    alkaline != null && alkaline,
                    active == null || active,
                    version);
        }

        private static Pack pack(@Nullable Packed sent) {
            Packed pack = Json.required("packs", sent);
            return new Pack(Json.required("packs.name", pack.name()), Json.quantity("packs.content", pack.content()));
        }
    }

    @GET
    @Path("items")
    @Transactional
    @Operation(summary = "All consumables, those no longer in use too")
    public List<Item> items() {
        return readStock.items().stream().map(Item::of).toList();
    }

    @GET
    @Path("items/{id}")
    @Transactional
    @Operation(summary = "A consumable")
    public Item item(@PathParam("id") String id) {
        return Item.of(readStock.item(StockItemId.of(id)));
    }

    @PUT
    @Path("items/{id}")
    @Operation(summary = "Adds a consumable, or changes the version named; the same again changes nothing")
    public Item save(@PathParam("id") String id, @Nullable Item body) {
        StockItem saved = saveStockItem.save(Json.required("body", body).read(StockItemId.of(id)));
        auditLog.done("stock-item.save", saved.code());
        return Item.of(saved);
    }

    @PUT
    @Path("locations/{location}/reorder-points/{item}")
    @Operation(summary = "Sets how much of an item a location should hold at least; zero removes the minimum")
    public Response setReorderPoint(
            @PathParam("location") String location, @PathParam("item") String item, @Nullable Measured body) {
        LocationId at = LocationId.of(location);
        Quantity least = Json.quantity("body", body);
        setReorderPoint.set(StockItemId.of(item), at, least);
        auditLog.done("stock.reorderPoint", at + "/" + item);
        return Response.noContent().build();
    }
}
