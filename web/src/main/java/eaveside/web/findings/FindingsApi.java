package eaveside.web.findings;

import eaveside.access.Role;
import eaveside.findings.ActOnFinding;
import eaveside.findings.FindingAction;
import eaveside.findings.FindingActionId;
import eaveside.findings.FindingLine;
import eaveside.findings.FindingView;
import eaveside.findings.ReadFindings;
import eaveside.kernel.FindingId;
import eaveside.kernel.Slice;
import eaveside.web.Json;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
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
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Findings for scripts. */
@Path("/api/findings")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE})
@Tag(name = "Findings")
public class FindingsApi {
    private static final int PAGE = 100;

    private final ReadFindings readFindings;
    private final ActOnFinding actOnFinding;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public FindingsApi(ReadFindings readFindings, ActOnFinding actOnFinding, Viewer viewer, AuditLog auditLog) {
        this.readFindings = readFindings;
        this.actOnFinding = actOnFinding;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /** An open finding in a list. */
    public record Line(
            String id, String type, String severity, String customer, String visit, String openedAt, int actions) {
        static Line of(FindingLine f) {
            return new Line(
                    f.id().toString(),
                    f.typeName(),
                    f.severity().name(),
                    f.customer().toString(),
                    f.visit().toString(),
                    f.openedAt().toString(),
                    f.actions());
        }
    }

    /** A page of the list; ask for more with {@code after=next}. */
    public record Lines(List<Line> findings, @Nullable String next) {}

    /** A finding. */
    public record Finding(
            String id,
            String type,
            String severity,
            String state,
            String note,
            boolean customerNotified,
            List<String> photos,
            int actions) {
        static Finding of(FindingView f) {
            return new Finding(
                    f.id().toString(),
                    f.type().name(),
                    f.severity().name(),
                    f.state().name(),
                    f.note(),
                    f.customerNotified(),
                    f.photos().stream().map(p -> "/photos/" + p.id()).toList(),
                    f.actions().size());
        }
    }

    /**
     * An answer.
     *
     * @param  type NOTICE, UPSELL, REFERRAL or CLOSING
     * @param  to   whom the notice went to, or whom it was referred to
     * @param  note of the answer; the reason of a closing
     */
    public record NewAction(
            @Nullable String id,
            @Nullable String type,
            @Nullable String to,
            @Nullable String trade,
            @Nullable String note) {}

    @GET
    @Transactional
    @Operation(summary = "Open findings, the one that has waited longest first")
    public Lines findings(@QueryParam("after") @Nullable String after) {
        Slice<Line> page = readFindings.open(after, PAGE).map(Line::of);
        return new Lines(page.rows(), page.next());
    }

    @GET
    @Path("{id}")
    @Transactional
    @Operation(summary = "A finding")
    public Finding finding(@PathParam("id") String id) {
        return Finding.of(readFindings.finding(FindingId.of(id)));
    }

    @POST
    @Path("{id}/actions")
    @Operation(summary = "Records what was done about a finding; the same again changes nothing")
    public Finding answer(@PathParam("id") String id, @Nullable NewAction body) {
        NewAction answer = Json.required("body", body);
        FindingId finding = FindingId.of(id);
        FindingActionId findingActionId = FindingActionId.of(Json.required("id", answer.id()));
        String note = answer.note() == null ? "" : answer.note();
        String to = answer.to() == null ? "" : answer.to();
        switch (Json.required("type", answer.type())) {
            case "NOTICE" ->
                actOnFinding.sendNotice(new FindingAction.Notice(findingActionId, finding, to, note, viewer.id()));
            case "UPSELL" ->
                actOnFinding.noteUpsell(new FindingAction.Upsell(findingActionId, finding, note, viewer.id()));
            case "REFERRAL" ->
                actOnFinding.refer(new FindingAction.Referral(
                        findingActionId, finding, answer.trade() == null ? "" : answer.trade(), to, note, viewer.id()));
            case "CLOSING" ->
                actOnFinding.close(new FindingAction.Closing(findingActionId, finding, note, viewer.id()));
            default -> throw new WebRefusal.Unreadable("'type' is NOTICE, UPSELL, REFERRAL or CLOSING");
        }
        auditLog.done("finding.act", finding);
        return Finding.of(readFindings.finding(finding));
    }
}
