package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.customers.SurfaceKind;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockItem;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.OfferingId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.offerings.Catalogue;
import eaveside.offerings.Offering;
import eaveside.offerings.SaveOffering;
import eaveside.offerings.ServiceLine;
import eaveside.offerings.StandardConsumable;
import eaveside.offerings.StandardMinutes;
import eaveside.offerings.TaxCode;
import eaveside.web.Csv;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Trail;
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
@Path("/settings/offerings")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class OfferingResource {
    private final Catalogue catalogue;
    private final OfferingForm form;
    private final SaveOffering saveOffering;
    private final ReadStock readStock;
    private final Viewer viewer;
    private final Trail trail;

    @Inject
    public OfferingResource(
            Catalogue catalogue,
            OfferingForm form,
            SaveOffering saveOffering,
            ReadStock readStock,
            Viewer viewer,
            Trail trail) {
        this.catalogue = catalogue;
        this.form = form;
        this.saveOffering = saveOffering;
        this.readStock = readStock;
        this.viewer = viewer;
        this.trail = trail;
    }

    /** Offerings under their service line. */
    public record LineOfferings(ServiceLine line, List<Offering> offerings) {}

    public record OfferingsPage(List<LineOfferings> lines) implements Page {
        @Override
        public String template() {
            return "settings/offerings.jte";
        }
    }

    @GET
    @Transactional
    public OfferingsPage offerings() {
        List<Offering> all = catalogue.offerings();
        return new OfferingsPage(catalogue.lines().stream()
                .map(line -> new LineOfferings(
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
        for (LineOfferings line : offerings().lines()) {
            for (Offering o : line.offerings()) {
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
                "offerings",
                List.of("service line", "code", "name", "unit", "minutes per unit", "tax code", "sold"),
                rows);
    }

    @GET
    @Path("new")
    @Transactional
    public OfferingForm.OfferingFormPage fresh() {
        return form.page(
                Fields.showing(Map.of(
                        "id",
                        OfferingId.next().toString(),
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
    public OfferingForm.OfferingFormPage edit(@PathParam("id") String id) {
        Offering offering = catalogue.offering(OfferingId.of(id));
        Map<String, String> values = OfferingForm.values(offering);
        values.put("id", offering.id().toString());
        values.put("version", String.valueOf(offering.version()));
        return form.page(Fields.showing(values), false);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(MultivaluedMap<String, String> typed) {
        Fields fields = viewer.fields(typed);
        OfferingId id = new OfferingId(fields.id("id"));
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        String code = fields.text("code");
        String name = fields.text("name");
        String line = fields.text("serviceLine");
        Unit unit = fields.choice("unit", Unit.class);
        BigDecimal minutes = fields.decimal("minutesPerUnit");
        String tax = fields.text("taxCode");
        SurfaceKind surface =
                fields.optional("surfaceKind").isEmpty() ? null : fields.choice("surfaceKind", SurfaceKind.class);
        List<StandardConsumable> consumables = consumables(fields);
        boolean saved = fields.run(
                () -> saveOffering.save(
                        new Offering(
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
                refusal -> refusal instanceof KernelRefusal.Stale other && other.theirs() instanceof Offering theirs
                        ? Optional.of(new Fields.Stored(theirs.version(), OfferingForm.values(theirs)))
                        : Optional.empty());
        if (!saved) {
            return Response.status(fields.status())
                    .entity(form.page(fields, version == 0))
                    .build();
        }
        trail.done("offering.save", code);
        return Response.seeOther(URI.create("/settings/offerings?done=settings.saved"))
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
