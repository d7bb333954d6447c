package eaveside.web.visits;

import eaveside.access.Role;
import eaveside.customers.FindCustomers;
import eaveside.customers.FindCustomers.CustomerLine;
import eaveside.customers.ReadCustomer;
import eaveside.customers.Site;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Ids;
import eaveside.kernel.SiteId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.ledger.Books;
import eaveside.visits.ScheduleVisit;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import eaveside.web.visits.SchedulingForm.Form;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Booking a visit: from an agreed quote, to come back for skipped work, or freely for a customer's site. */
@Path("/visits/new")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class SchedulingResource {
    private static final int FOUND = 20;

    private final ScheduleVisit scheduleVisit;
    private final SchedulingForm schedulingForm;
    private final FindCustomers findCustomers;
    private final ReadCustomer readCustomer;
    private final Books books;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public SchedulingResource(
            ScheduleVisit scheduleVisit,
            SchedulingForm schedulingForm,
            FindCustomers findCustomers,
            ReadCustomer readCustomer,
            Books books,
            Viewer viewer,
            AuditLog auditLog) {
        this.scheduleVisit = scheduleVisit;
        this.schedulingForm = schedulingForm;
        this.findCustomers = findCustomers;
        this.readCustomer = readCustomer;
        this.books = books;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /** The first step of a free booking: whose site it is. */
    public record WhosePage(String q, List<CustomerLine> customers, List<Site> sites) implements Page {
        @Override
        public String template() {
            return "visits/whose.jte";
        }
    }

    /** The form. */
    public record SchedulingPage(Form form, Fields fields) implements Page {
        @Override
        public String template() {
            return "visits/scheduling.jte";
        }
    }

    @GET
    @Transactional
    public Page form(
            @QueryParam("quote") @DefaultValue("") String quote,
            @QueryParam("return") @DefaultValue("") String returns,
            @QueryParam("site") @DefaultValue("") String site,
            @QueryParam("customer") @DefaultValue("") String customer,
            @QueryParam("q") @DefaultValue("") String q) {
        if (quote.isEmpty() && returns.isEmpty() && site.isEmpty()) {
            return whose(customer, q);
        }
        Map<String, String> values = new HashMap<>();
        values.put("id", Ids.next().toString());
        values.put("quote", quote);
        values.put("return", returns);
        values.put("site", site);
        values.put("date", books.today().plusDays(1).toString());
        Form form = schedulingForm.of(Fields.showing(values));
        values.putAll(form.suggested());
        return new SchedulingPage(form, Fields.showing(values));
    }

    private WhosePage whose(String customer, String q) {
        List<Site> sites = customer.isEmpty()
                ? List.of()
                : readCustomer.sites(CustomerId.of(customer)).stream()
                        .filter(Site::active)
                        .toList();
        return new WhosePage(
                q, customer.isEmpty() ? findCustomers.find(q, true, null, FOUND).rows() : List.of(), sites);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response book(MultivaluedMap<String, String> typed) {
        Fields fields = viewer.fields(typed);
        VisitId id = new VisitId(fields.id("id"));
        LocalDate date = fields.date("date", books.today());
        List<UserId> crew = fields.all("crew").stream().map(UserId::of).toList();
        if (crew.isEmpty()) {
            fields.wrong("crew", "visits.crew.missing");
        }
        List<ScheduleVisit.Line> lines = fields.typed("site").isEmpty() ? List.of() : schedulingForm.lines(fields);
        boolean scheduled = fields.run(() -> book(fields, id, date, crew, lines));
        if (!scheduled) {
            return Response.status(fields.status())
                    .entity(new SchedulingPage(schedulingForm.of(fields), fields))
                    .build();
        }
        auditLog.done("visit.schedule", id);
        return Response.seeOther(URI.create("/visits/" + id + "?done=visits.scheduled"))
                .build();
    }

    private void book(Fields fields, VisitId id, LocalDate date, List<UserId> crew, List<ScheduleVisit.Line> lines) {
        String note = fields.optional("note");
        if (!fields.typed("quote").isEmpty()) {
            scheduleVisit.schedule(
                    new ScheduleVisit.FromQuote(id, SchedulingForm.quote(fields), date, crew, note, viewer.id()));
        } else if (!fields.typed("return").isEmpty()) {
            scheduleVisit.schedule(
                    new ScheduleVisit.Return(id, VisitId.of(fields.typed("return")), date, crew, note, viewer.id()));
        } else {
            Site site = readCustomer.site(SiteId.of(fields.typed("site")));
            scheduleVisit.schedule(new ScheduleVisit.Scheduling(
                    id, site.customerId(), site.id(), date, crew, lines, note, viewer.id()));
        }
    }
}
