package eaveside.web.stock;

import eaveside.access.Role;
import eaveside.inventory.CountStock;
import eaveside.inventory.Location;
import eaveside.inventory.Pack;
import eaveside.inventory.Portion;
import eaveside.inventory.ReadStock;
import eaveside.inventory.ReceiveGoods;
import eaveside.inventory.StockItem;
import eaveside.inventory.TransferStock;
import eaveside.inventory.WriteOffStock;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Ids;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.ledger.Books;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
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
import java.net.URI;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Entering a receipt, a transfer, a count or written off goods: one form with rows, four documents. */
@Path("/stock/new/{type}")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class MovementResource {
    private static final int ROWS = 3;

    private final ReadStock readStock;
    private final ReceiveGoods receiveGoods;
    private final TransferStock transferStock;
    private final CountStock countStock;
    private final WriteOffStock writeOffStock;
    private final Books books;
    private final Viewer viewer;

    @Inject
    public MovementResource(
            ReadStock readStock,
            ReceiveGoods receiveGoods,
            TransferStock transferStock,
            CountStock countStock,
            WriteOffStock writeOffStock,
            Books books,
            Viewer viewer) {
        this.readStock = readStock;
        this.receiveGoods = receiveGoods;
        this.transferStock = transferStock;
        this.countStock = countStock;
        this.writeOffStock = writeOffStock;
        this.books = books;
        this.viewer = viewer;
    }

    /** What is entered; its name in the address. */
    public enum Movement {
        RECEIPT,
        TRANSFER,
        COUNT,
        WRITE_OFF;

        public String inAddress() {
            return name().toLowerCase(Locale.ROOT);
        }

        static Movement of(String inAddress) {
            for (Movement movement : values()) {
                if (movement.inAddress().equals(inAddress)) {
                    return movement;
                }
            }
            throw new WebRefusal.NoSuchPage();
        }
    }

    /**
     * @param  items choices by id; an item's packs follow it as {@code id/pack}
     * @param  lots  canisters and brushes by id
     */
    public record MovementPage(
            Movement movement,
            Fields fields,
            List<Integer> rows,
            Map<String, String> locations,
            Map<String, String> items,
            Map<String, String> lots)
            implements Page {
        @Override
        public String template() {
            return "stock/movement.jte";
        }
    }

    @GET
    @Transactional
    public MovementPage form(
            @PathParam("type") String type, @QueryParam("location") @DefaultValue("") String location) {
        return page(
                Movement.of(type),
                Fields.showing(Map.of(
                        "id", Ids.next().toString(), "date", books.today().toString(), "location", location)));
    }

    private MovementPage page(Movement movement, Fields fields) {
        View view = viewer.view();
        Map<String, String> locations = new LinkedHashMap<>();
        Map<String, String> lots = new LinkedHashMap<>();
        for (Location location : readStock.locations()) {
            locations.put(location.id().toString(), location.name());
            for (ReadStock.LotLevel lot : readStock.countedSingly(location.id())) {
                lots.put(lot.lot().toString(), lot.item().name() + " " + lot.label() + ", " + location.name());
            }
        }
        Map<String, String> items = new LinkedHashMap<>();
        for (StockItem item : readStock.items()) {
            items.put(item.id().toString(), view.t("stock.item-in", item.name(), view.unit(item.baseUnit())));
            if (movement == Movement.RECEIPT) {
                for (Pack pack : item.packs()) {
                    items.put(item.id() + "/" + pack.name(), view.t("stock.item-in", item.name(), pack.name()));
                }
            }
        }
        List<Integer> rows = fields.rows("line");
        return new MovementPage(
                movement,
                fields,
                rows.isEmpty() ? IntStream.range(0, ROWS).boxed().toList() : rows,
                locations,
                items,
                lots);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response post(@PathParam("type") String type, MultivaluedMap<String, String> form) {
        Movement movement = Movement.of(type);
        Fields fields = viewer.fields(form);
        DocumentId id = new DocumentId(fields.id("id"));
        LocalDate date = fields.date("date", books.today());
        String note = fields.text("note");
        String location = fields.text("location");
        String to = movement == Movement.TRANSFER ? fields.text("to") : "";
        List<Row> rows = rows(fields, movement);
        boolean posted = fields.run(() -> {
            LocationId at = LocationId.of(location);
            switch (movement) {
                case RECEIPT ->
                    receiveGoods.receive(new ReceiveGoods.Receipt(
                            id,
                            date,
                            at,
                            note,
                            fields.optional("deliveryNote"),
                            rows.stream().map(Row::received).toList(),
                            viewer.id()));
                case TRANSFER ->
                    transferStock.transfer(new TransferStock.Transfer(
                            id,
                            date,
                            at,
                            LocationId.of(to),
                            note,
                            rows.stream().map(Row::portion).toList(),
                            viewer.id()));
                case COUNT ->
                    countStock.count(new CountStock.Count(
                            id, date, at, note, rows.stream().map(Row::counted).toList(), viewer.id()));
                case WRITE_OFF ->
                    writeOffStock.writeOff(new WriteOffStock.WriteOff(
                            id, date, at, note, rows.stream().map(Row::portion).toList(), viewer.id()));
            }
        });
        if (!posted) {
            return Response.status(fields.status())
                    .entity(page(movement, fields))
                    .build();
        }
        return Response.seeOther(URI.create("/documents/" + id + "?done=books.posted"))
                .build();
    }

    /** A filled row of the form. */
    private record Row(StockItem item, String pack, String lot, Quantity quantity, Money cost, String label) {
        ReceiveGoods.Received received() {
            return new ReceiveGoods.Received(null, item.id(), pack.isEmpty() ? null : pack, quantity, cost, label);
        }

        Portion portion() {
            return new Portion(item.id(), lot.isEmpty() ? null : LotId.of(lot), quantity);
        }

        CountStock.Counted counted() {
            return CountStock.Counted.found(item.id(), lot.isEmpty() ? null : LotId.of(lot), quantity);
        }
    }

    private List<Row> rows(Fields fields, Movement movement) {
        List<Row> rows = new ArrayList<>();
        for (int number : fields.rows("line")) {
            String p = "line-" + number + "-";
            String chosen = fields.typed(p + "item");
            String lot = fields.typed(p + "lot");
            if (chosen.isEmpty() && lot.isEmpty()) {
                if (Stream.of("quantity", "cost", "label")
                        .anyMatch(part -> !fields.typed(p + part).isBlank())) {
                    fields.wrong(p + "item", "forms.missing");
                }
                continue;
            }
            String[] part = chosen.split("/", 2);
            Row row = fields.made(p + "item", () -> {
                StockItem item = readStock.item(
                        part[0].isEmpty() ? readStock.lot(LotId.of(lot)).item() : StockItemId.of(part[0]));
                String pack = part.length == 2 ? part[1] : "";
                Quantity quantity = fields.quantity(p + "quantity", pack.isEmpty() ? item.baseUnit() : Unit.PIECE);
                Money cost = movement == Movement.RECEIPT ? fields.money(p + "cost", books.currency()) : books.zero();
                return new Row(item, pack, lot, quantity, cost, fields.optional(p + "label"));
            });
            if (row != null) {
                rows.add(row);
            }
        }
        return rows;
    }
}
