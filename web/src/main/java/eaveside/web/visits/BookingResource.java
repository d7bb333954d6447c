package eaveside.web.visits;

import eaveside.access.ReadUsers;
import eaveside.access.Role;
import eaveside.access.User;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.kernel.CustomerId;
import eaveside.kernel.QuoteId;
import eaveside.kernel.SiteId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.ledger.Books;
import eaveside.offerings.Catalogue;
import eaveside.offerings.Offering;
import eaveside.pricing.Quote;
import eaveside.pricing.ReadQuotes;
import eaveside.visits.BookVisit;
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
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Booking a visit: from an agreed quote, or freely for a site. */
@Path("/visits/new")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class BookingResource {
    private final BookVisit bookVisit;
    private final ReadQuotes readQuotes;
    private final ReadCustomer readCustomer;
    private final ReadSurfaces readSurfaces;
    private final Catalogue catalogue;
    private final ReadUsers readUsers;
    private final Books books;
    private final Viewer viewer;
    private final Trail trail;

    @Context
    UriInfo uri;

    @Inject
    public BookingResource(
            BookVisit bookVisit,
            ReadQuotes readQuotes,
            ReadCustomer readCustomer,
            ReadSurfaces readSurfaces,
            Catalogue catalogue,
            ReadUsers readUsers,
            Books books,
            Viewer viewer,
            Trail trail) {
        this.bookVisit = bookVisit;
        this.readQuotes = readQuotes;
        this.readCustomer = readCustomer;
        this.readSurfaces = readSurfaces;
        this.catalogue = catalogue;
        this.readUsers = readUsers;
        this.books = books;
        this.viewer = viewer;
        this.trail = trail;
    }

    /**
     * @param quote  its number, or empty for a free booking
     * @param scope  what can be booked freely: one row for each surface and the offering that fits it
     */
    public record BookingPage(
            Fields fields,
            String customerName,
            String quote,
            Map<String, String> sites,
            List<ScopeRow> scope,
            List<User> technicians)
            implements Page {
        @Override
        public String template() {
            return "visits/booking.jte";
        }
    }

    /** @param key {@code surface.offering}, the row's name in the form */
    public record ScopeRow(String key, Surface surface, Offering offering) {}

    @GET
    @Transactional
    public BookingPage form() {
        Fields asked = Fields.of(uri.getQueryParameters());
        Map<String, String> values = new HashMap<>();
        values.put("id", VisitId.next().toString());
        values.put("date", books.today().plusDays(1).toString());
        for (String name : List.of("quote", "customer", "site")) {
            values.put(name, asked.typed(name));
        }
        return page(Fields.showing(values));
    }

    private BookingPage page(Fields fields) {
        List<User> technicians = readUsers.technicians();
        if (!fields.typed("quote").isEmpty()) {
            Quote quote = readQuotes.quote(QuoteId.of(fields.typed("quote")));
            return new BookingPage(
                    fields,
                    readCustomer.customer(quote.customer()).name(),
                    String.valueOf(quote.number()),
                    Map.of(),
                    List.of(),
                    technicians);
        }
        CustomerId customer = CustomerId.of(fields.typed("customer"));
        Map<String, String> sites = new LinkedHashMap<>();
        List<ScopeRow> scope = new ArrayList<>();
        for (Site site : readCustomer.sites(customer)) {
            sites.put(site.id().toString(), site.name());
            String chosen = fields.typed("site");
            if (site.id().toString().equals(chosen) || (chosen.isEmpty() && sites.size() == 1)) {
                scope.addAll(scope(site.id()));
            }
        }
        return new BookingPage(fields, readCustomer.customer(customer).name(), "", sites, scope, technicians);
    }

    private List<ScopeRow> scope(SiteId site) {
        List<ScopeRow> rows = new ArrayList<>();
        for (Surface surface : readSurfaces.ofSite(site)) {
            for (Offering offering : catalogue.offerings()) {
                if (offering.active() && offering.surfaceKind() == surface.kind()) {
                    rows.add(new ScopeRow(surface.id() + "." + offering.id(), surface, offering));
                }
            }
        }
        return rows;
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response book(MultivaluedMap<String, String> form) {
        Fields fields = Fields.of(form);
        VisitId id = new VisitId(fields.id("id"));
        LocalDate date = fields.date("date", books.today());
        List<UserId> crew = fields.all("crew").stream().map(UserId::of).toList();
        String note = fields.optional("note");
        boolean booked = fields.run(() -> {
            if (fields.typed("quote").isEmpty()) {
                bookVisit.book(new BookVisit.Booking(
                        id,
                        CustomerId.of(fields.typed("customer")),
                        SiteId.of(fields.text("site")),
                        date,
                        crew,
                        lines(fields),
                        note,
                        viewer.id()));
            } else {
                bookVisit.book(
                        new BookVisit.FromQuote(id, QuoteId.of(fields.typed("quote")), date, crew, note, viewer.id()));
            }
        });
        if (!booked) {
            return Response.status(fields.status()).entity(page(fields)).build();
        }
        trail.done("visit.book", id);
        return Response.seeOther(URI.create("/visits/" + id + "?done=visits.booked"))
                .build();
    }

    private List<BookVisit.Line> lines(Fields fields) {
        List<BookVisit.Line> lines = new ArrayList<>();
        for (ScopeRow row : scope(SiteId.of(fields.text("site")))) {
            String name = "quantity." + row.key();
            if (!fields.typed(name).isBlank()) {
                lines.add(new BookVisit.Line(
                        new VisitLineId(fields.id("line." + row.key())),
                        row.offering().id(),
                        row.surface().id(),
                        fields.quantity(name, row.offering().unit())));
            }
        }
        return lines;
    }
}
