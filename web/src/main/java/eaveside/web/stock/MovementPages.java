package eaveside.web.stock;

import eaveside.inventory.CountStock;
import eaveside.inventory.Location;
import eaveside.inventory.LotLevel;
import eaveside.inventory.ReadStock;
import eaveside.inventory.ReceiveGoods;
import eaveside.inventory.ReceiveGoods.Receipt;
import eaveside.inventory.StockCount;
import eaveside.inventory.TransferStock;
import eaveside.inventory.TransferStock.Transfer;
import eaveside.inventory.WriteOffStock;
import eaveside.inventory.WriteOffStock.WriteOff;
import eaveside.kernel.LotId;
import eaveside.kernel.Unit;
import eaveside.ledger.Books;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.Options;
import eaveside.web.forms.PageResource;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.WebRefusal;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** Entering a receipt, transfer, physical count or write-off: one form with rows, four commands. */
@Path("/stock/new/{type}")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class MovementPages extends PageResource {
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

    /** The form; among its items a receipt's packs follow theirs, as {@code id/pack}. */
    public record MovementPage(Movement movement, Form<?> form) implements Page {}

    @GET
    @Transactional
    public MovementPage fresh(
            @PathParam("type") String type, @QueryParam("location") @DefaultValue("") String location) {
        Movement movement = Movement.of(type);
        return page(
                movement,
                viewer.dated(movement.command, Map.of(movement.fields().get(1), location)));
    }

    @POST
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
            String line = "line-" + row + "-";
            // A command that names no quantity means all that is there, which is clear for a canister or brush alone.
            if (!fields.typed(line + "item").isEmpty()
                    && fields.typed(line + "lot").isEmpty()) {
                fields.decimal(line + "quantity");
            }
        }
        if (form.run(useCase)) {
            return Respond.to("/documents/" + fields.typed("id"), "books.posted");
        }
        for (int row : fields.rows("line")) {
            // A pack is chosen with its item.
            fields.moveError("line-" + row + "-pack", "line-" + row + "-item");
        }
        return Respond.again(fields, page(movement, form));
    }

    /** What was typed, with a pack apart from its item, and the item of a canister or brush that was chosen by itself. */
    private MultivaluedMap<String, String> withItems(MultivaluedMap<String, String> typed) {
        MultivaluedMap<String, String> all = new MultivaluedHashMap<>(typed);
        Fields fields = Fields.shown(typed);
        for (int row : fields.rows("line")) {
            String line = "line-" + row + "-";
            String[] chosen = fields.typed(line + "item").split("/", 2);
            String lot = fields.typed(line + "lot");
            if (chosen.length == 2) {
                all.putSingle(line + "item", chosen[0]);
                all.putSingle(line + "pack", chosen[1]);
            } else if (chosen[0].isEmpty() && !lot.isEmpty()) {
                all.putSingle(line + "item", readStock.lot(LotId.of(lot)).item().toString());
            }
        }
        return all;
    }

    /** What a row's quantity is counted in: packs, or the item's base unit as the company measures. */
    private Unit unit(Fields fields, String line) {
        return readStock.items().stream()
                .filter(item -> item.id().toString().equals(fields.typed(line + "item")))
                .filter(item -> fields.typed(line + "pack").isEmpty())
                .findFirst()
                .map(item -> viewer.view().unitOf(item.baseUnit()))
                .orElse(Unit.PIECE);
    }

    private MovementPage page(Movement movement, Form<?> form) {
        View view = viewer.view();
        List<Location> locations = readStock.locations();
        Stream.of("location", "from", "to")
                .filter(movement.fields()::contains)
                .forEach(name -> form.choosing(name, Options.of(locations, Location::id, Location::name)));
        Map<String, String> items = new LinkedHashMap<>();
        readStock.items().forEach(item -> {
            String id = item.id().toString();
            items.put(id, view.t("stock.item-in", item.name(), view.unit(view.unitOf(item.baseUnit()))));
            if (movement == Movement.RECEIPT) {
                item.packs()
                        .forEach(pack ->
                                items.put(id + "/" + pack.name(), view.t("stock.item-in", item.name(), pack.name())));
            }
        });
        Map<String, String> lots = new LinkedHashMap<>();
        locations.forEach(location -> lots.putAll(Options.of(
                readStock.countedSingly(location.id()),
                LotLevel::lot,
                lot -> lot.item().name() + " " + lot.label() + ", " + location.name())));
        return new MovementPage(
                movement, form.labeled("stock").choosing("item", items).choosing("lot", lots));
    }
}
