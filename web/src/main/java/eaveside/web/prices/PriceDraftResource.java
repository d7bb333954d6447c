package eaveside.web.prices;

import eaveside.access.Role;
import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.PriceBookId;
import eaveside.ledger.Books;
import eaveside.pricing.PriceList;
import eaveside.pricing.PublishPriceBook;
import eaveside.pricing.SavePriceBook;
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
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Writing a draft, and putting it into force; the owner's alone. */
@Path("/prices")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For(Role.OWNER)
public class PriceDraftResource {
    private final SavePriceBook savePriceBook;
    private final PublishPriceBook publishPriceBook;
    private final PriceBooksPage shelf;
    private final Catalog catalog;
    private final Books books;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public PriceDraftResource(
            SavePriceBook savePriceBook,
            PublishPriceBook publishPriceBook,
            PriceBooksPage shelf,
            Catalog catalog,
            Books books,
            Viewer viewer,
            AuditLog auditLog) {
        this.savePriceBook = savePriceBook;
        this.publishPriceBook = publishPriceBook;
        this.shelf = shelf;
        this.catalog = catalog;
        this.books = books;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /** A service's part of the form; the row is its number in the fields' names. */
    public record ServiceItemRow(int row, ServiceItem serviceItem, List<SurfaceAttribute> attributes) {
        public String field() {
            return PriceForm.serviceItem(row);
        }

        public String per() {
            return PriceForm.per(row);
        }

        public String steps() {
            return PriceForm.steps(row);
        }

        public String extras() {
            return PriceForm.extras(row);
        }

        /** The rows that have something in them, and an empty one to fill. */
        public List<Integer> rows(Fields fields, String prefix) {
            List<Integer> rows = new ArrayList<>(fields.rows(prefix));
            rows.removeIf(k -> blank(fields, prefix + "-" + k + "-"));
            rows.add(rows.isEmpty() ? 0 : rows.getLast() + 1);
            return rows;
        }

        private static boolean blank(Fields fields, String prefix) {
            return List.of("from", "price", "attribute", "atLeast", "percent", "amount").stream()
                    .allMatch(part -> fields.typed(prefix + part).isBlank());
        }

        public boolean isPriced(Fields fields) {
            return rows(fields, steps()).size() > 1;
        }

        /** Whether something of this service is to be mended. */
        public boolean isWrong(Fields fields) {
            return fields.errors().keySet().stream()
                    .anyMatch(name -> name.equals(field())
                            || name.equals(per())
                            || name.startsWith(steps() + "-")
                            || name.startsWith(extras() + "-"));
        }
    }

    /**
     * The form.
     *
     * @param  version  that a save starts from
     * @param  conflict what is stored now (before) and what was typed (after), where somebody else was faster
     */
    public record DraftPage(
            PriceBookId id,
            int version,
            Fields fields,
            Map<ServiceLine, Integer> lines,
            List<ServiceItemRow> serviceItems,
            String currency,
            @Nullable Comparison conflict)
            implements Page {
        @Override
        public String template() {
            return "prices/draft.jte";
        }

        public boolean isNew() {
            return version == 0;
        }

        public String line(int row) {
            return PriceForm.line(row);
        }

        public String minimum(int row) {
            return PriceForm.minimum(row);
        }

        /** The services of a line: those still sold, and those that the book prices all the same. */
        public List<ServiceItemRow> of(ServiceLine line) {
            return serviceItems.stream()
                    .filter(o -> o.serviceItem().serviceLine().equals(line.id()))
                    .filter(o -> o.serviceItem().active() || o.isPriced(fields))
                    .toList();
        }
    }

    /** The question before publishing, with what it would change. */
    public record PublishPage(
            Shown book, @Nullable Shown inForce, @Nullable Comparison comparison, Fields fields) implements Page {
        @Override
        public String template() {
            return "prices/publish.jte";
        }
    }

    @GET
    @Path("new")
    @Transactional
    public DraftPage fresh(@QueryParam("from") @Nullable String from) {
        Map<String, String> values = new LinkedHashMap<>(Map.of("visitMinimum", "0", "sharedReduction", "0"));
        if (from != null && !from.isEmpty()) {
            PriceList copied = shelf.book(PriceBookId.of(from)).list();
            values.putAll(form().filled(copied));
            values.put("name", "");
        }
        // Without any book nothing can be quoted yet: the first one is wanted at once.
        LocalDate today = books.today();
        values.put("from", (shelf.hasPublished() ? today.withDayOfMonth(1).plusMonths(1) : today).toString());
        return page(PriceBookId.next(), 0, Fields.showing(values), null);
    }

    @GET
    @Path("{id}/edit")
    @Transactional
    public Response edit(@PathParam("id") String id) {
        Shown book = shelf.book(PriceBookId.of(id));
        return book.isDraft()
                ? Response.ok(page(book.id(), book.version(), Fields.showing(form().filled(book.list())), null))
                        .build()
                : Response.seeOther(URI.create("/prices/" + book.id())).build();
    }

    @POST
    @Path("{id}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(@PathParam("id") String id, MultivaluedMap<String, String> typed) {
        PriceBookId book = PriceBookId.of(id);
        Fields fields = viewer.fields(typed);
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        Supplier<PriceList> list = form().read(fields, books.today());
        boolean saved =
                fields.run(() -> savePriceBook.save(new SavePriceBook.Save(book, version, list.get(), viewer.id())));
        if (saved) {
            return Response.seeOther(URI.create("/prices/" + book + "?done=prices.saved"))
                    .build();
        }
        if (fields.status() == Response.Status.CONFLICT.getStatusCode()) {
            Shown stored = shelf.book(book);
            Comparison conflict = Comparison.of(stored.list(), list.get(), catalog, viewer.view());
            return Response.status(fields.status())
                    .entity(page(book, stored.version(), fields, conflict))
                    .build();
        }
        return Response.status(fields.status())
                .entity(page(book, version, fields, null))
                .build();
    }

    @GET
    @Path("{id}/publish")
    @Transactional
    public PublishPage askToPublish(@PathParam("id") String id) {
        return publishPage(PriceBookId.of(id), Fields.empty());
    }

    @POST
    @Path("{id}/publish")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response publish(@PathParam("id") String id, MultivaluedMap<String, String> typed) {
        PriceBookId book = PriceBookId.of(id);
        Fields fields = viewer.fields(typed);
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        boolean published =
                fields.run(() -> publishPriceBook.publish(new PublishPriceBook.Publish(book, version, viewer.id())));
        if (!published) {
            return Response.status(fields.status())
                    .entity(publishPage(book, fields))
                    .build();
        }
        auditLog.done("price-book.publish", book);
        return Response.seeOther(URI.create("/prices/" + book + "?done=prices.published-done"))
                .build();
    }

    private PublishPage publishPage(PriceBookId id, Fields fields) {
        Shown book = shelf.book(id);
        Shown inForce = shelf.inForce(book.list().from()).orElse(null);
        Comparison comparison =
                inForce == null ? null : Comparison.of(inForce.list(), book.list(), catalog, viewer.view());
        return new PublishPage(book, inForce, comparison, fields);
    }

    /** Of all that is or was ever sold: a book that is copied may still price it. */
    private PriceForm form() {
        return new PriceForm(catalog.lines(), catalog.serviceItems(), books.currency());
    }

    private DraftPage page(PriceBookId id, int version, Fields fields, @Nullable Comparison conflict) {
        PriceForm form = form();
        Map<ServiceLine, Integer> lines = form.lineRows(fields);
        List<ServiceItemRow> rows = new ArrayList<>();
        form.serviceItemRows(fields)
                .forEach((serviceItem, row) -> rows.add(new ServiceItemRow(row, serviceItem, attributes(serviceItem))));
        return new DraftPage(id, version, fields, lines, rows, books.currency().getCode(), conflict);
    }

    private static List<SurfaceAttribute> attributes(ServiceItem serviceItem) {
        var type = serviceItem.surfaceType();
        return type == null
                ? List.of()
                : Arrays.stream(SurfaceAttribute.values())
                        .filter(a -> a.appliesTo(type))
                        .toList();
    }
}
