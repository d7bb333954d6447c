package eaveside.web.findings;

import eaveside.access.Role;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadSurfaces;
import eaveside.findings.ActOnFinding;
import eaveside.findings.FindingAction;
import eaveside.findings.FindingActionId;
import eaveside.findings.FindingView;
import eaveside.findings.ReadFindings;
import eaveside.kernel.FindingId;
import eaveside.kernel.UserId;
import eaveside.pricing.QuoteSummary;
import eaveside.pricing.ReadQuotes;
import eaveside.reports.Papers;
import eaveside.web.Names;
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
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Map;

/** One finding: what was seen, its photos, what was answered, and the next answer. */
@Path("/findings/{id: [0-9a-fA-F-]{36}}")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class FindingResource {
    private final ReadFindings readFindings;
    private final ActOnFinding actOnFinding;
    private final ReadQuotes readQuotes;
    private final ReadCustomer readCustomer;
    private final ReadSurfaces readSurfaces;
    private final Papers papers;
    private final NoticePapers noticePapers;
    private final Viewer viewer;
    private final AuditLog auditLog;
    private final Names names;

    @Inject
    public FindingResource(
            ReadFindings readFindings,
            ActOnFinding actOnFinding,
            ReadQuotes readQuotes,
            ReadCustomer readCustomer,
            ReadSurfaces readSurfaces,
            Papers papers,
            NoticePapers noticePapers,
            Viewer viewer,
            AuditLog auditLog,
            Names names) {
        this.readFindings = readFindings;
        this.actOnFinding = actOnFinding;
        this.readQuotes = readQuotes;
        this.readCustomer = readCustomer;
        this.readSurfaces = readSurfaces;
        this.papers = papers;
        this.noticePapers = noticePapers;
        this.viewer = viewer;
        this.auditLog = auditLog;
        this.names = names;
    }

    /**
     * @param  site    its name
     * @param  surface its name, or empty
     * @param  quotes  that came from this finding
     * @param  fields  of the answer being given
     */
    public record FindingPage(
            FindingView finding, String site, String surface, List<QuoteSummary> quotes, Names names, Fields fields)
            implements Page {
        @Override
        public String template() {
            return "findings/finding.jte";
        }

        public boolean isOpen() {
            return finding.state() == FindingView.State.OPEN;
        }
    }

    @GET
    @Transactional
    public FindingPage finding(@PathParam("id") String id) {
        FindingView finding = readFindings.finding(FindingId.of(id));
        return page(
                finding,
                Fields.showing(Map.of(
                        "id",
                        FindingActionId.next().toString(),
                        "sentTo",
                        readCustomer.customer(finding.customer()).email(),
                        "trade",
                        finding.type().trade())));
    }

    private FindingPage page(FindingView finding, Fields fields) {
        return new FindingPage(
                finding,
                readCustomer.site(finding.site()).name(),
                finding.surface() == null
                        ? ""
                        : readSurfaces.surface(finding.surface()).name(),
                readQuotes.from(finding.id()),
                names,
                fields);
    }

    @POST
    @Path("notice")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response notice(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        return answer(id, form, (fields, answer, finding, by) -> {
            String sentTo = fields.text("sentTo");
            actOnFinding.sendNotice(new FindingAction.Notice(answer, finding, sentTo, fields.optional("note"), by));
        });
    }

    @POST
    @Path("upsell")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response upsell(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        return answer(id, form, (fields, answer, finding, by) -> {
            String note = fields.text("upsell");
            actOnFinding.noteUpsell(new FindingAction.Upsell(answer, finding, note, by));
        });
    }

    @POST
    @Path("referral")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response refer(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        return answer(id, form, (fields, answer, finding, by) -> {
            String trade = fields.text("trade");
            String whom = fields.text("referredTo");
            actOnFinding.refer(new FindingAction.Referral(answer, finding, trade, whom, fields.optional("note"), by));
        });
    }

    @POST
    @Path("close")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response close(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        return answer(id, form, (fields, answer, finding, by) -> {
            String reason = fields.text("reason");
            actOnFinding.close(new FindingAction.Closing(answer, finding, reason, by));
        });
    }

    /** One of the four answers, from its form. */
    private interface Given {
        void give(Fields fields, FindingActionId answer, FindingId finding, UserId by);
    }

    private Response answer(String id, MultivaluedMap<String, String> form, Given given) {
        FindingId finding = FindingId.of(id);
        Fields fields = viewer.fields(form);
        FindingActionId answer = new FindingActionId(fields.id("id"));
        boolean answered = fields.run(() -> given.give(fields, answer, finding, viewer.id()));
        if (!answered || fields.hasErrors()) {
            return Response.status(fields.status())
                    .entity(page(readFindings.finding(finding), fields))
                    .build();
        }
        auditLog.done("finding.act", finding);
        return Response.seeOther(URI.create("/findings/" + finding + "?done=findings.answered"))
                .build();
    }

    @GET
    @Path("notice.pdf")
    @Produces(Papers.PDF)
    @Transactional
    public Response paper(@PathParam("id") String id) {
        FindingView finding = readFindings.finding(FindingId.of(id));
        return Response.ok(papers.notice(noticePapers.paper(List.of(finding))))
                .header(HttpHeaders.CONTENT_DISPOSITION, "inline; filename=\"notice.pdf\"")
                .build();
    }
}
