package eaveside.web.stock;

import eaveside.inventory.CountStock;
import eaveside.inventory.ReadStock;
import eaveside.inventory.ReceiveGoods;
import eaveside.inventory.ReceiveGoods.Receipt;
import eaveside.inventory.StockCount;
import eaveside.inventory.StockItem;
import eaveside.inventory.TransferStock;
import eaveside.inventory.TransferStock.Transfer;
import eaveside.inventory.WriteOffStock;
import eaveside.inventory.WriteOffStock.WriteOff;
import eaveside.kernel.Ids;
import eaveside.kernel.LotId;
import eaveside.kernel.Unit;
import eaveside.ledger.Books;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import jakarta.annotation.security.RolesAllowed;
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
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Entering a receipt, transfer, physical count or write-off: one form with rows, four commands. */
@Path("/stock/new/{type}")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class MovementPages {
    private static final int ROWS = 3;

    @Inject
    ReadStock readStock;

    @Inject
    ReceiveGoods receiveGoods;

    @Inject
    TransferStock transferStock;

    @Inject
    CountStock countStock;

    @Inject
    WriteOffStock writeOffStock;

    @Inject
    Books books;

    @Inject
    Viewer viewer;

    /** What is entered: its command, and the fields that stand above its rows. */
    public enum Movement {
        RECEIPT(Receipt.class, "date", "location", "supplier", "deliveryNote"),
        TRANSFER(Transfer.class, "date", "from", "to", "note"),
        COUNT(StockCount.class, "date", "location", "reason"),
        WRITE_OFF(WriteOff.class, "date", "location", "reason");

        private final Class<?> command;
        private final List<String> fields;

        Movement(Class<?> command, String... fields) {
            this.command = command;
            this.fields = List.of(fields);
        }

        public List<String> fields() {
            return fields;
        }

        public String inAddress() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }

        static Movement of(String inAddress) {
            return Stream.of(values())
                    .filter(movement -> movement.inAddress().equals(inAddress))
                    .findFirst()
                    .orElseThrow(WebRefusal.NoSuchPage::new);
        }
    }

    /**
     * The form.
     *
     * @param  rows  the numbers of the rows
     * @param  items choices by id; a receipt's packs follow their item as {@code id/pack}
     * @param  lots  canisters and brushes by id
     */
    public record MovementForm(
            Movement movement, Form<?> form, List<Integer> rows, Map<String, String> items, Map<String, String> lots)
            implements Page {
        @Override
        public String template() {
            return "stock/movement.jte";
        }

        public boolean isReceipt() {
            return movement == Movement.RECEIPT;
        }
    }

    @GET
    @Transactional
    public MovementForm fresh(
            @PathParam("type") String type, @QueryParam("location") @DefaultValue("") String location) {
        Movement movement = Movement.of(type);
        return page(
                movement,
                viewer.form(
                        movement.command,
                        Map.of(
                                "id",
                                Ids.next().toString(),
                                "date",
                                books.today().toString(),
                                movement.fields().get(1),
                                location)));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response post(@PathParam("type") String type, MultivaluedMap<String, String> typed) {
        Movement movement = Movement.of(type);
        return switch (movement) {
            case RECEIPT -> posted(movement, Receipt.class, typed, receiveGoods::receive);
            case TRANSFER -> posted(movement, Transfer.class, typed, transferStock::transfer);
            case COUNT -> posted(movement, StockCount.class, typed, countStock::count);
            case WRITE_OFF -> posted(movement, WriteOff.class, typed, writeOffStock::writeOff);
        };
    }

    private <C> Response posted(
            Movement movement, Class<C> command, MultivaluedMap<String, String> typed, Consumer<C> useCase) {
        Fields fields = viewer.fields(withItems(typed));
        Form<C> form = Form.sent(command, fields)
                .given("by", viewer.id())
                .in(path -> unit(fields, path.substring(0, path.lastIndexOf('-') + 1)));
        for (int row : fields.rows("line")) {
            // A command that names no quantity means all that is there, which is clear for a canister or brush alone.
            if (!fields.typed("line-" + row + "-item").isEmpty()
                    && fields.typed("line-" + row + "-lot").isEmpty()) {
                fields.decimal("line-" + row + "-quantity");
            }
        }
        if (form.run(useCase)) {
            return Respond.to("/documents/" + fields.typed("id"), "books.posted");
        }
        List.of("item", "lot", "pack", "quantity", "cost", "label").forEach(name -> fields.moveError(name, "lines"));
        return Respond.again(fields, page(movement, form));
    }

    /** What was typed, with a pack apart from its item, and the item of a canister or brush that was chosen by itself. */
    private MultivaluedMap<String, String> withItems(MultivaluedMap<String, String> typed) {
        MultivaluedMap<String, String> all = new MultivaluedHashMap<>(typed);
        for (int row : Fields.shown(typed).rows("line")) {
            String line = "line-" + row + "-";
            String[] chosen = Fields.shown(typed).typed(line + "item").split("/", 2);
            String lot = Fields.shown(typed).typed(line + "lot");
            if (chosen.length == 2) {
                all.putSingle(line + "item", chosen[0]);
                all.putSingle(line + "pack", chosen[1]);
            } else if (chosen[0].isEmpty() && !lot.isEmpty()) {
                all.putSingle(line + "item", readStock.lot(LotId.of(lot)).item().toString());
            }
        }
        return all;
    }

    /** What a row's quantity is counted in: packs, or the item's base unit. */
    private Unit unit(Fields fields, String line) {
        return fields.typed(line + "pack").isEmpty()
                ? readStock.items().stream()
                        .filter(item -> item.id().toString().equals(fields.typed(line + "item")))
                        .findFirst()
                        .map(StockItem::baseUnit)
                        .orElse(Unit.PIECE)
                : Unit.PIECE;
    }

    private MovementForm page(Movement movement, Form<?> form) {
        View view = viewer.view();
        Map<String, String> locations = new LinkedHashMap<>();
        Map<String, String> lots = new LinkedHashMap<>();
        readStock.locations().forEach(location -> {
            locations.put(location.id().toString(), location.name());
            readStock
                    .countedSingly(location.id())
                    .forEach(lot -> lots.put(
                            lot.lot().toString(), lot.item().name() + " " + lot.label() + ", " + location.name()));
        });
        Map<String, String> items = new LinkedHashMap<>();
        readStock.items().forEach(item -> {
            items.put(item.id().toString(), view.t("stock.item-in", item.name(), view.unit(item.baseUnit())));
            if (movement == Movement.RECEIPT) {
                item.packs()
                        .forEach(pack -> items.put(
                                item.id() + "/" + pack.name(), view.t("stock.item-in", item.name(), pack.name())));
            }
        });
        List.of("location", "from", "to").stream()
                .filter(movement.fields()::contains)
                .forEach(name -> form.choosing(name, locations));
        List<Integer> rows = form.fields().rows("line");
        return new MovementForm(
                movement,
                form.labeled("stock"),
                rows.isEmpty() ? IntStream.range(0, ROWS).boxed().toList() : rows,
                items,
                lots);
    }
}
