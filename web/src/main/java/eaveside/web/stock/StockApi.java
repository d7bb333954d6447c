package eaveside.web.stock;

import eaveside.access.Role;
import eaveside.inventory.CountStock;
import eaveside.inventory.Portion;
import eaveside.inventory.ReadStock;
import eaveside.inventory.ReceiveGoods;
import eaveside.inventory.ReverseStockDocument;
import eaveside.inventory.TransferStock;
import eaveside.inventory.WriteOffStock;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.StockItemId;
import eaveside.ledger.Books;
import eaveside.ledger.Posted;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.web.Json;
import eaveside.web.Json.Amount;
import eaveside.web.Json.Measured;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** What locations hold, and the documents that move it, for scripts. */
@Path("/api/stock")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE})
@Tag(name = "Stock")
public class StockApi {
    private final ReadStock readStock;
    private final ReceiveGoods receiveGoods;
    private final TransferStock transferStock;
    private final CountStock countStock;
    private final WriteOffStock writeOffStock;
    private final ReverseStockDocument reverseStockDocument;
    private final Books books;
    private final Viewer viewer;

    @Inject
    public StockApi(
            ReadStock readStock,
            ReceiveGoods receiveGoods,
            TransferStock transferStock,
            CountStock countStock,
            WriteOffStock writeOffStock,
            ReverseStockDocument reverseStockDocument,
            Books books,
            Viewer viewer) {
        this.readStock = readStock;
        this.receiveGoods = receiveGoods;
        this.transferStock = transferStock;
        this.countStock = countStock;
        this.writeOffStock = writeOffStock;
        this.reverseStockDocument = reverseStockDocument;
        this.books = books;
        this.viewer = viewer;
    }

    /** What a location holds of an item. */
    public record Level(
            String item,
            String code,
            String name,
            Measured quantity,
            Amount value,
            @Nullable Measured reorderPoint) {}

    /** @param  lot the new lot's id for a receipt; otherwise a canister or brush, or absent for the oldest goods */
    public record Goods(
            @Nullable String item,
            @Nullable String lot,
            @Nullable String pack,
            @Nullable Measured quantity,
            @Nullable String cost,
            @Nullable String label) {}

    /**
     * @param  note         the supplier of a receipt, otherwise the reason
     * @param  deliveryNote the supplier's own number of a receipt; kept in its document's summary
     */
    public record Movement(
            @Nullable String id,
            @Nullable String date,
            @Nullable String location,
            @Nullable String to,
            @Nullable String note,
            @Nullable String deliveryNote,
            @Nullable List<Goods> lines) {}

    /** @param  id of the reversing document */
    public record NewReversal(@Nullable String id, @Nullable String reason) {}

    /** What was posted. */
    public record Done(String id, long number, String postingDate) {
        static Done of(Posted posted) {
            return new Done(
                    posted.id().toString(),
                    posted.number(),
                    posted.postingDate().toString());
        }
    }

    @GET
    @Path("locations/{id}")
    @Transactional
    @Operation(summary = "What a location holds")
    public List<Level> levels(@PathParam("id") String id) {
        LocationId location = readStock.location(LocationId.of(id)).id();
        return readStock.levels(location).stream()
                .map(l -> new Level(
                        l.item().id().toString(),
                        l.item().code(),
                        l.item().name(),
                        Measured.of(l.quantity()),
                        Amount.of(l.value()),
                        l.reorderPoint() == null ? null : Measured.of(l.reorderPoint())))
                .toList();
    }

    @POST
    @Path("receipts")
    @Operation(summary = "Takes goods in, each line as a lot; the same again changes nothing")
    public Done receive(@Nullable Movement body) {
        Movement movement = Json.required("body", body);
        List<ReceiveGoods.Received> lines = Json.required("lines", movement.lines()).stream()
                .map(g -> new ReceiveGoods.Received(
                        lot(g),
                        item(g),
                        g.pack(),
                        Json.quantity("quantity", g.quantity()),
                        Json.money("cost", g.cost(), books.currency()),
                        g.label() == null ? "" : g.label()))
                .toList();
        return done(receiveGoods.receive(new ReceiveGoods.Receipt(
                id(movement),
                Json.date("date", movement.date()),
                location(movement),
                note(movement),
                Json.optional(movement.deliveryNote()),
                lines,
                viewer.id())));
    }

    @POST
    @Path("transfers")
    @Operation(summary = "Moves goods between locations at their cost")
    public Done transfer(@Nullable Movement body) {
        Movement movement = Json.required("body", body);
        return done(transferStock.transfer(new TransferStock.Transfer(
                id(movement),
                Json.date("date", movement.date()),
                location(movement),
                LocationId.of(Json.required("to", movement.to())),
                note(movement),
                portions(movement),
                viewer.id())));
    }

    @POST
    @Path("counts")
    @Operation(summary = "Enters what was counted; the difference to the books is posted at cost")
    public Done count(@Nullable Movement body) {
        Movement movement = Json.required("body", body);
        List<CountStock.Counted> lines = Json.required("lines", movement.lines()).stream()
                .map(g -> CountStock.Counted.found(item(g), lot(g), Json.quantity("quantity", g.quantity())))
                .toList();
        return done(countStock.count(new CountStock.Count(
                id(movement),
                Json.date("date", movement.date()),
                location(movement),
                note(movement),
                lines,
                viewer.id())));
    }

    @POST
    @Path("write-offs")
    @Operation(summary = "Writes goods off that are thrown away, at their cost; the same again changes nothing")
    public Done writeOff(@Nullable Movement body) {
        Movement movement = Json.required("body", body);
        return done(writeOffStock.writeOff(new WriteOffStock.WriteOff(
                id(movement),
                Json.date("date", movement.date()),
                location(movement),
                note(movement),
                portions(movement),
                viewer.id())));
    }

    @POST
    @Path("documents/{id}/reversal")
    @Operation(summary = "Reverses a receipt, transfer, count or writing off in full, once, in both ledgers")
    public Done reverse(@PathParam("id") String id, @Nullable NewReversal body) {
        NewReversal reversal = Json.required("body", body);
        DocumentId original = DocumentId.of(id);
        Posted posted = reverseStockDocument.reverse(new Reversal(
                DocumentId.of(Json.required("id", reversal.id())),
                original,
                null,
                Json.required("reason", reversal.reason()),
                viewer.id()));
        return Done.of(posted);
    }

    private Done done(Posted posted) {
        return Done.of(posted);
    }

    private static DocumentId id(Movement movement) {
        return DocumentId.of(Json.required("id", movement.id()));
    }

    private static List<Portion> portions(Movement movement) {
        return Json.required("lines", movement.lines()).stream()
                .map(g -> new Portion(item(g), lot(g), Json.quantity("quantity", g.quantity())))
                .toList();
    }

    private static LocationId location(Movement movement) {
        return LocationId.of(Json.required("location", movement.location()));
    }

    private static String note(Movement movement) {
        return Json.required("note", movement.note());
    }

    private static StockItemId item(Goods goods) {
        return StockItemId.of(Json.required("item", goods.item()));
    }

    private static @Nullable LotId lot(Goods goods) {
        return goods.lot() == null ? null : LotId.of(goods.lot());
    }
}
