package eaveside.web.findings;

import eaveside.customers.CustomerLine;
import eaveside.customers.FindCustomers;
import eaveside.customers.ReadCustomer;
import eaveside.findings.ActOnFinding;
import eaveside.findings.FindingAction.Closing;
import eaveside.findings.FindingAction.Notice;
import eaveside.findings.FindingAction.Referral;
import eaveside.findings.FindingAction.Upsell;
import eaveside.findings.FindingActionId;
import eaveside.findings.FindingLine;
import eaveside.findings.FindingView;
import eaveside.findings.ReadFindings;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.Slice;
import eaveside.pricing.QuoteSummary;
import eaveside.pricing.ReadQuotes;
import eaveside.reports.Papers;
import eaveside.web.Names;
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
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/** What was seen on site: the list, each finding with its photos and actions, and the next action. */
@Path("/findings")
@Dependent
@Produces(MediaType.TEXT_HTML)
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class FindingPages extends ListResource<FindingLine> {
    private static final int MOST_CUSTOMERS = 200;

    @Inject
    ReadFindings readFindings;

    @Inject
    ActOnFinding actOnFinding;

    @Inject
    FindCustomers findCustomers;

    @Inject
    ReadQuotes readQuotes;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    Papers papers;

    @Inject
    NoticePapers noticePapers;

    @Inject
    Names names;

    /** What else than open findings the list shows. */
    public enum Show {
        CLOSED
    }

    @Override
    protected Listing<FindingLine> list() {
        View view = viewer.view();
        return Listing.of("findings", "/findings", this::read)
                .about("intro")
                .searched()
                .choice("show", Show.class)
                .column(
                        "seen",
                        finding -> finding.openedAt().atZone(view.zone()).toLocalDate())
                .column("type", FindingLine::typeName, finding -> "/findings/" + finding.id())
                .column("severity", finding -> finding.severity().name())
                .column("customer", f -> names.customer(f.customer()), f -> "/customers/" + f.customer())
                .columns("note", "customerNotified", "photos")
                .column("status", finding -> status(view, finding));
    }

    private static String status(View view, FindingLine finding) {
        return finding.status() != FindingView.Status.OPEN
                ? view.t("findings.status", finding.status())
                : finding.actions() == 0 ? view.t("findings.no-action") : view.t("findings.actions", finding.actions());
    }

    private Slice<FindingLine> read(Listing.Query query) {
        boolean closed = query.chosen("show", Show.class) == Show.CLOSED;
        Slice<FindingLine> page = query.search().isBlank()
                ? closed
                        ? readFindings.closed(query.after(), query.size())
                        : readFindings.open(query.after(), query.size())
                : readFindings.ofCustomers(customers(query.search()), !closed, query.after(), query.size());
        names.lookUp(page.rows().stream().map(FindingLine::customer).distinct().toList());
        return page;
    }

    private List<CustomerId> customers(String words) {
        return findCustomers.find(words, false, null, MOST_CUSTOMERS).rows().stream()
                .map(CustomerLine::id)
                .toList();
    }

    /**
     * @param  quotes that came from this finding
     * @param  fields of the next action, whichever it is
     */
    public record FindingPage(FindingView finding, List<QuoteSummary> quotes, Names names, Fields fields)
            implements Page {}

    @GET
    @Path("{id: [0-9a-fA-F-]{36}}")
    @Transactional
    public FindingPage finding(@PathParam("id") FindingId id) {
        return page(id, Fields.empty());
    }

    private FindingPage page(FindingId id, Fields fields) {
        FindingView finding = readFindings.finding(id);
        return new FindingPage(
                finding,
                readQuotes.from(finding.id()),
                names,
                fields.completedBy(Map.of(
                        "id",
                        FindingActionId.next().toString(),
                        "sentTo",
                        readCustomer.customer(finding.customer()).email(),
                        "trade",
                        finding.type().trade())));
    }

    @POST
    @Path("{finding}/notice")
    public Response notice(@PathParam("finding") FindingId finding, Form<Notice> form) {
        return answered(finding, form, actOnFinding::sendNotice);
    }

    @POST
    @Path("{finding}/upsell")
    public Response upsell(@PathParam("finding") FindingId finding, Form<Upsell> form) {
        return answered(finding, form, actOnFinding::noteUpsell);
    }

    @POST
    @Path("{finding}/referral")
    public Response refer(@PathParam("finding") FindingId finding, Form<Referral> form) {
        return answered(finding, form, actOnFinding::refer);
    }

    @POST
    @Path("{finding}/close")
    public Response close(@PathParam("finding") FindingId finding, Form<Closing> form) {
        return answered(finding, form, actOnFinding::close);
    }

    private <A> Response answered(FindingId finding, Form<A> form, Consumer<A> deed) {
        Fields fields = form.labeled("findings").fields();
        return form.run(deed)
                ? Respond.to("/findings/" + finding, "findings.answered")
                : Respond.again(fields, page(finding, fields));
    }

    @GET
    @Path("{id: [0-9a-fA-F-]{36}}/notice.pdf")
    @Produces(Papers.PDF)
    @Transactional
    public Response paper(@PathParam("id") FindingId id) {
        return Respond.inline(
                papers.notice(noticePapers.paper(List.of(readFindings.finding(id)))), Papers.PDF, "notice.pdf");
    }
}
