package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.catalog.Catalog;
import eaveside.catalog.SaveServiceItem;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.catalog.StandardConsumable;
import eaveside.catalog.StandardMinutes;
import eaveside.catalog.TaxCode;
import eaveside.customers.SurfaceType;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockItem;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
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
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.math.BigDecimal;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What the company sells, with its standards: minutes, consumables, tax code and cautions. */
@Path("/settings/services")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class ServiceItemResource {
    private final Catalog catalog;
    private final ServiceItemForm form;
    private final SaveServiceItem saveServiceItem;
    private final ReadStock readStock;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public ServiceItemResource(
            Catalog catalog,
            ServiceItemForm form,
            SaveServiceItem saveServiceItem,
            ReadStock readStock,
            Viewer viewer,
            AuditLog auditLog) {
        this.catalog = catalog;
        this.form = form;
        this.saveServiceItem = saveServiceItem;
        this.readStock = readStock;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /** Services under their service line. */
    public record LineServiceItems(ServiceLine line, List<ServiceItem> serviceItems) {}

    public record ServiceItemsPage(List<LineServiceItems> lines) implements Page {
        @Override
        public String template() {
            return "settings/services.jte";
        }
    }

    @GET
    @Transactional
    public ServiceItemsPage serviceItems() {
        List<ServiceItem> all = catalog.serviceItems();
        return new ServiceItemsPage(catalog.lines().stream()
                .map(line -> new LineServiceItems(
                        line,
                        all.stream()
                                .filter(o -> o.serviceLine().equals(line.id()))
                                .toList()))
                .toList());
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv() {
        List<List<String>> rows = new ArrayList<>();
        for (LineServiceItems line : serviceItems().lines()) {
            for (ServiceItem o : line.serviceItems()) {
                rows.add(List.of(
                        line.line().name(),
                        o.code(),
                        o.name(),
                        o.unit().code(),
                        o.minutesPerUnit().value().toPlainString(),
                        o.taxCode().value(),
                        o.active() ? "yes" : "no"));
            }
        }
        return Csv.download(
                "serviceItems",
                List.of("service line", "code", "name", "unit", "minutes per unit", "tax code", "sold"),
                rows);
    }

    @GET
    @Path("new")
    @Transactional
    public ServiceItemForm.ServiceItemFormPage fresh() {
        return form.page(
                Fields.showing(Map.of(
                        "id",
                        ServiceItemId.next().toString(),
                        "version",
                        "0",
                        "unit",
                        Unit.PIECE.name(),
                        "active",
                        "yes")),
                true);
    }

    @GET
    @Path("{id}")
    @Transactional
    public ServiceItemForm.ServiceItemFormPage edit(@PathParam("id") String id) {
        ServiceItem serviceItem = catalog.serviceItem(ServiceItemId.of(id));
        Map<String, String> values = ServiceItemForm.values(serviceItem);
        values.put("id", serviceItem.id().toString());
        values.put("version", String.valueOf(serviceItem.version()));
        return form.page(Fields.showing(values), false);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(MultivaluedMap<String, String> typed) {
        Fields fields = viewer.fields(typed);
        ServiceItemId id = new ServiceItemId(fields.id("id"));
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        String code = fields.text("code");
        String name = fields.text("name");
        String line = fields.text("serviceLine");
        Unit unit = fields.choice("unit", Unit.class);
        BigDecimal minutes = fields.decimal("minutesPerUnit");
        String tax = fields.text("taxCode");
        SurfaceType surface =
                fields.optional("surfaceType").isEmpty() ? null : fields.choice("surfaceType", SurfaceType.class);
        List<StandardConsumable> consumables = consumables(fields);
        boolean saved = fields.run(
                () -> saveServiceItem.save(
                        new ServiceItem(
                                id,
                                ServiceLineId.of(line),
                                code,
                                name,
                                unit == null ? Unit.PIECE : unit,
                                new StandardMinutes(minutes),
                                new TaxCode(tax),
                                surface,
                                fields.optional("cautions"),
                                consumables,
                                fields.ticked("active"),
                                version),
                        viewer.id()),
                refusal -> refusal instanceof KernelRefusal.Stale other && other.theirs() instanceof ServiceItem theirs
                        ? Optional.of(new Fields.Stored(theirs.version(), ServiceItemForm.values(theirs)))
                        : Optional.empty());
        if (!saved) {
            return Response.status(fields.status())
                    .entity(form.page(fields, version == 0))
                    .build();
        }
        auditLog.done("serviceItem.save", code);
        return Response.seeOther(URI.create("/settings/services?done=settings.saved"))
                .build();
    }

    private List<StandardConsumable> consumables(Fields fields) {
        List<StandardConsumable> consumables = new ArrayList<>();
        for (int row : fields.rows("use")) {
            String prefix = "use-" + row + "-";
            String item = fields.optional(prefix + "item");
            if (item.isEmpty() && fields.optional(prefix + "quantity").isEmpty()) {
                continue;
            }
            StockItem known = item(fields, prefix + "item");
            if (known == null) {
                continue;
            }
            Quantity perUnit = fields.quantity(prefix + "quantity", known.baseUnit());
            StandardConsumable consumable =
                    fields.made(prefix + "quantity", () -> new StandardConsumable(known.id(), perUnit));
            if (consumable != null) {
                consumables.add(consumable);
            }
        }
        return consumables;
    }

    private @Nullable StockItem item(Fields fields, String name) {
        String id = fields.optional(name);
        if (id.isEmpty()) {
            fields.wrong(name, "forms.choose");
            return null;
        }
        return fields.made(name, () -> readStock.item(StockItemId.of(id)));
    }
}
