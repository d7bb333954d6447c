package eaveside.web.stock;

import eaveside.inventory.CountStock;
import eaveside.inventory.Location;
import eaveside.inventory.Mix;
import eaveside.inventory.ReadStock;
import eaveside.inventory.ReceiveGoods;
import eaveside.inventory.ReceiveGoods.Receipt;
import eaveside.inventory.ReverseStockDocument;
import eaveside.inventory.SaveLocation;
import eaveside.inventory.SaveMix;
import eaveside.inventory.SaveStockItem;
import eaveside.inventory.SetReorderPoint;
import eaveside.inventory.SetReorderPoint.ReorderPoint;
import eaveside.inventory.StockCount;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockLevel;
import eaveside.inventory.TransferStock;
import eaveside.inventory.TransferStock.Transfer;
import eaveside.inventory.WriteOffStock;
import eaveside.inventory.WriteOffStock.WriteOff;
import eaveside.kernel.LocationId;
import eaveside.kernel.MixId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Slice;
import eaveside.kernel.StockItemId;
import eaveside.ledger.Posted;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.web.forms.Created;
import eaveside.web.forms.JsonResource;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/**
 * Items, locations and mixes, what locations hold, and the documents that move it, for scripts. Ids are the client's own, so
 * that everything can be sent again.
 */
@Path("/api/stock")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Tag(name = "Stock")
public class StockApi extends JsonResource {
    private static final int PAGE = 100;

    @Inject
    ReadStock readStock;

    @Inject
    SaveStockItem saveStockItem;

    @Inject
    SetReorderPoint setReorderPoint;

    @Inject
    SaveLocation saveLocation;

    @Inject
    SaveMix saveMix;

    @Inject
    ReceiveGoods receiveGoods;

    @Inject
    TransferStock transferStock;

    @Inject
    CountStock countStock;

    @Inject
    WriteOffStock writeOffStock;

    @Inject
    ReverseStockDocument reverseStockDocument;

    /** A page of the list; ask for more with {@code after=next}. */
    public record Items(List<StockItem> items, @Nullable String next) {}

    public record Locations(List<Location> locations) {}

    public record Mixes(List<Mix> mixes) {}

    /** What a location holds, item by item. */
    public record Levels(List<Level> levels) {}

    /**
     * What a location holds of an item.
     *
     * @param  quantity in the item's base unit
     * @param  value    at the cost of the lots
     */
    public record Level(
            StockItemId item,
            String code,
            String name,
            Quantity quantity,
            Money value,
            @Nullable Quantity reorderPoint) {
        static Level of(StockLevel level) {
            StockItem item = level.item();
            return new Level(
                    item.id(), item.code(), item.name(), level.quantity(), level.value(), level.reorderPoint());
        }
    }

    @GET
    @Path("items")
    @Operation(summary = "Items whose code or name holds 'q', active or not, by name")
    public Items items(@QueryParam("q") @DefaultValue("") String search, @QueryParam("after") @Nullable String after) {
        Slice<StockItem> page = readStock.find(search, after, PAGE);
        return new Items(page.rows(), page.next());
    }

    @GET
    @Path("items/{id}")
    @Operation(summary = "An item")
    public StockItem item(@PathParam("id") StockItemId id) {
        return readStock.item(id);
    }

    @PUT
    @Path("items/{id}")
    @Operation(
            summary = "Adds an item, or edits the version named; the same again changes nothing",
            description =
                    "Packs are answered in the item's base unit. Its type and base unit stay as they are once it has"
                            + " lots, mixes or reorder points.")
    public StockItem saveItem(StockItem item) {
        return saveStockItem.save(item, viewer.id());
    }

    @GET
    @Path("locations")
    @Operation(summary = "Store rooms and vans, active or not")
    public Locations locations() {
        return new Locations(readStock.locations());
    }

    @GET
    @Path("locations/{id}")
    @Operation(summary = "A store room or van")
    public Location location(@PathParam("id") LocationId id) {
        return readStock.location(id);
    }

    @PUT
    @Path("locations/{id}")
    @Operation(summary = "Adds a store room or van, or edits the version named; the same again changes nothing")
    public Location saveLocation(Location location) {
        return saveLocation.save(location, viewer.id());
    }

    @GET
    @Path("locations/{id}/levels")
    @Transactional
    @Operation(summary = "What a location holds")
    public Levels levels(@PathParam("id") LocationId id) {
        LocationId location = readStock.location(id).id();
        return new Levels(readStock.levels(location).stream().map(Level::of).toList());
    }

    @PUT
    @Path("locations/{location}/reorder-points/{item}")
    @Operation(summary = "Sets how much of an item a location should hold at least; zero removes the reorder point")
    public ReorderPoint setReorderPoint(ReorderPoint point) {
        return setReorderPoint.set(point, viewer.id());
    }

    @GET
    @Path("mixes")
    @Operation(summary = "Mixes, active or not, by name")
    public Mixes mixes() {
        return new Mixes(readStock.mixes());
    }

    @GET
    @Path("mixes/{id}")
    @Operation(summary = "A mix")
    public Mix mix(@PathParam("id") MixId id) {
        return readStock.mix(id);
    }

    @PUT
    @Path("mixes/{id}")
    @Operation(summary = "Adds a mix, or edits the version named; the same again changes nothing")
    public Mix saveMix(Mix mix) {
        return saveMix.save(mix, viewer.id());
    }

    @POST
    @Path("receipts")
    @Operation(summary = "Receives goods, each line as a lot; the same again changes nothing")
    public Created<Posted> receive(Receipt receipt) {
        return Created.document(receiveGoods.receive(receipt));
    }

    @POST
    @Path("transfers")
    @Operation(summary = "Transfers goods between locations at their cost; the same again changes nothing")
    public Created<Posted> transfer(Transfer transfer) {
        return Created.document(transferStock.transfer(transfer));
    }

    @POST
    @Path("counts")
    @Operation(summary = "Enters a physical count; the difference to the books is posted at cost")
    public Created<Posted> count(StockCount count) {
        return Created.document(countStock.count(count));
    }

    @POST
    @Path("write-offs")
    @Operation(summary = "Writes goods off at their cost; the same again changes nothing")
    public Created<Posted> writeOff(WriteOff writeOff) {
        return Created.document(writeOffStock.writeOff(writeOff));
    }

    @POST
    @Path("documents/{original}/reversal")
    @Operation(summary = "Reverses a receipt, transfer, physical count or write-off in full, once, in both ledgers")
    public Created<Posted> reverse(Reversal reversal) {
        return Created.document(reverseStockDocument.reverse(reversal));
    }
}
