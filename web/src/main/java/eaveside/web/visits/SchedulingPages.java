package eaveside.web.visits;

import eaveside.customers.CustomerLine;
import eaveside.customers.FindCustomers;
import eaveside.customers.ReadCustomer;
import eaveside.customers.Site;
import eaveside.kernel.CustomerId;
import eaveside.kernel.QuoteId;
import eaveside.kernel.SiteId;
import eaveside.kernel.VisitId;
import eaveside.ledger.Books;
import eaveside.visits.ScheduleVisit;
import eaveside.visits.Scheduling;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
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
import jakarta.ws.rs.core.Response;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Scheduling a visit: from an accepted quote, to return for skipped work, or with work of its own at a site. */
@Path("/visits/new")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class SchedulingPages {
    private static final int FOUND = 20;

    @Inject
    ScheduleVisit scheduleVisit;

    @Inject
    SchedulingForms schedulingForms;

    @Inject
    FindCustomers findCustomers;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    Books books;

    @Inject
    Viewer viewer;

    /** The first step without a quote: which customer, and which site. */
    public record WhosePage(String q, List<CustomerLine> customers, List<Site> sites) implements Page {
        @Override
        public String template() {
            return "visits/whose.jte";
        }
    }

    @GET
    @Transactional
    public Page form(
            @QueryParam("quote") @Nullable QuoteId quote,
            @QueryParam("return") @Nullable VisitId returnsTo,
            @QueryParam("site") @Nullable SiteId site,
            @QueryParam("customer") @Nullable CustomerId customer,
            @QueryParam("q") @DefaultValue("") String q) {
        if (quote == null && returnsTo == null && site == null) {
            return whose(customer, q);
        }
        Map<String, String> values = new HashMap<>();
        values.put("id", VisitId.next().toString());
        values.put("date", books.today().plusDays(1).toString());
        put(values, "quote", quote);
        put(values, "returnsTo", returnsTo);
        put(values, "site", site);
        return schedulingForms.fresh(viewer.form(Scheduling.class, values).fields());
    }

    private static void put(Map<String, String> values, String name, @Nullable Object id) {
        values.put(name, id == null ? "" : id.toString());
    }

    private WhosePage whose(@Nullable CustomerId customer, String q) {
        return customer == null
                ? new WhosePage(q, findCustomers.find(q, true, null, FOUND).rows(), List.of())
                : new WhosePage(
                        q,
                        List.of(),
                        readCustomer.sites(customer).stream()
                                .filter(Site::active)
                                .toList());
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response schedule(Fields fields) {
        SchedulingPage page = schedulingForms.sent(fields);
        return page.form().given("by", viewer.id()).run(scheduleVisit::schedule)
                ? Respond.to("/visits/" + fields.typed("id"), "visits.scheduled")
                : Respond.again(page.form().fields(), page);
    }
}
