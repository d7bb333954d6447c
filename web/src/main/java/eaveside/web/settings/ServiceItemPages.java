package eaveside.web.settings;

import eaveside.catalog.Catalog;
import eaveside.catalog.SaveServiceItem;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.catalog.StandardConsumable;
import eaveside.catalog.TaxSetting;
import eaveside.catalog.TaxSettings;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockItem;
import eaveside.kernel.Quantity;
import eaveside.kernel.Records;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
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
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** What the company sells, with its standards: minutes, consumables, tax code and cautions. */
@Path("/settings/services")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class ServiceItemPages extends ListResource<ServiceItem> {
    private static final List<Unit> US = List.of(Unit.PIECE, Unit.SQUARE_FOOT, Unit.FOOT, Unit.HOUR, Unit.MILE);
    private static final List<Unit> METRIC =
            List.of(Unit.PIECE, Unit.SQUARE_METER, Unit.METER, Unit.HOUR, Unit.KILOMETER);

    @Inject
    Catalog catalog;

    @Inject
    TaxSettings taxSettings;

    @Inject
    ReadStock readStock;

    @Inject
    SaveServiceItem saveServiceItem;

    /** The form with what there is to choose from; each map goes from what is sent to what is shown. */
    public record ServiceItemForm(
            Form<ServiceItem> form,
            Map<String, String> lines,
            Map<String, String> units,
            Map<String, String> taxCodes,
            Map<String, String> items)
            implements Page {
        @Override
        public String template() {
            return "settings/service-item-form.jte";
        }

        /** The rows of consumables: one more than are filled in, unless the form comes back with errors. */
        public List<Integer> rows() {
            List<Integer> rows = new ArrayList<>(form.fields().rows("consumable"));
            if (rows.isEmpty() || !form.fields().hasErrors()) {
                rows.add(rows.isEmpty() ? 0 : rows.getLast() + 1);
            }
            return rows;
        }
    }

    @Override
    protected Listing<ServiceItem> list() {
        View view = viewer.view();
        Map<ServiceLineId, ServiceLine> lines = new HashMap<>();
        catalog.lines().forEach(line -> lines.put(line.id(), line));
        return Listing.whole(
                        "settings.services",
                        "/settings/services",
                        query -> catalog.serviceItems().stream()
                                .filter(service -> query.finds(service.code(), service.name()))
                                .toList())
                .within("settings.title", "/settings")
                .about("intro")
                .searched()
                .opening("code", service -> "/settings/services/" + service.id())
                .columns("name")
                .column("unit", service -> view.t("settings.unit", service.unit()))
                .column("minutesPerUnit", service -> service.minutesPerUnit().value())
                .columns("taxCode")
                .column("consumables", service -> service.consumables().size())
                .column(
                        "serviceLine",
                        service -> Objects.requireNonNull(lines.get(service.serviceLine()))
                                .name())
                .columns("active")
                .action("new", "/settings/services/new");
    }

    @GET
    @Path("new")
    @Transactional
    public ServiceItemForm fresh() {
        return page(viewer.form(
                ServiceItem.class,
                Map.of("id", ServiceItemId.next().toString(), "unit", Unit.PIECE.code(), "active", "yes")));
    }

    @GET
    @Path("{id}")
    @Transactional
    public ServiceItemForm edit(@PathParam("id") ServiceItemId id) {
        ServiceItem service = catalog.serviceItem(id);
        Map<String, StockItem> items = items();
        List<StandardConsumable> inBaseUnits = service.consumables().stream()
                .map(use -> new StandardConsumable(use.item(), inBaseUnit(use, items)))
                .toList();
        return page(viewer.form(Records.with(service, "consumables", inBaseUnits)));
    }

    /** As the form asks for it; as it is where the item is gone or counted otherwise, for somebody to mend. */
    private static Quantity inBaseUnit(StandardConsumable use, Map<String, StockItem> items) {
        StockItem item = items.get(use.item().toString());
        return item != null && use.perUnit().unit().isLike(item.baseUnit())
                ? use.perUnit().in(item.baseUnit())
                : use.perUnit();
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(Form<ServiceItem> form) {
        Map<String, StockItem> items = items();
        form.labeled("settings.services").in(field -> {
            StockItem item = items.get(form.fields().typed(field.replaceFirst("perUnit$", "item")));
            return item == null ? Unit.PIECE : item.baseUnit(); // that the item is missing is told of the item
        });
        return form.run(service -> saveServiceItem.save(service, viewer.id()))
                ? Respond.to("/settings/services", "settings.services.saved")
                : Respond.again(form.fields(), page(form));
    }

    private Map<String, StockItem> items() {
        Map<String, StockItem> items = new LinkedHashMap<>();
        readStock.items().forEach(item -> items.put(item.id().toString(), item));
        return items;
    }

    private ServiceItemForm page(Form<ServiceItem> form) {
        View view = viewer.view();
        Fields fields = form.labeled("settings.services").fields();
        Map<String, String> lines = new LinkedHashMap<>();
        catalog.lines().stream()
                .filter(line -> line.active() || line.id().toString().equals(fields.typed("serviceLine")))
                .forEach(line -> lines.put(line.id().toString(), line.code() + " · " + line.name()));
        Map<String, String> units = new LinkedHashMap<>();
        (view.us() ? US : METRIC).forEach(unit -> units.put(unit.code(), view.t("settings.unit", unit)));
        for (Unit unit : Unit.values()) {
            if (unit.code().equals(fields.typed("unit"))) {
                units.put(unit.code(), view.t("settings.unit", unit));
            }
        }
        Map<String, String> taxCodes = new LinkedHashMap<>();
        for (TaxSetting tax : taxSettings.all()) {
            taxCodes.putIfAbsent(tax.code().value(), tax.code() + " · " + view.percent(tax.rate()));
        }
        Map<String, String> items = new LinkedHashMap<>();
        items().forEach((id, item) ->
                items.put(id, view.t("settings.item-in", item.name(), view.t("settings.unit", item.baseUnit()))));
        return new ServiceItemForm(form, lines, units, taxCodes, items);
    }
}
