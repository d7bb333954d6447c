package eaveside.web.findings;

import eaveside.customers.ReadCustomer;
import eaveside.findings.ActOnFinding;
import eaveside.findings.FindingAction.Closing;
import eaveside.findings.FindingAction.Notice;
import eaveside.findings.FindingAction.Referral;
import eaveside.findings.FindingAction.Upsell;
import eaveside.findings.FindingLine;
import eaveside.findings.FindingView;
import eaveside.findings.ReadFindings;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.Slice;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
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

/** Findings for scripts. A photo of a finding is at {@code /photos/} and its id. */
@Path("/api/findings")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Tag(name = "Findings")
public class FindingsApi {
    private static final int PAGE = 100;

    @Inject
    ReadFindings readFindings;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    ActOnFinding actOnFinding;

    /** A page of the list; ask for more with {@code after=next}. */
    public record Findings(
            List<FindingLine> findings, @Nullable String next) {}

    /** Which findings a list has. */
    public enum Which {
        OPEN,
        CLOSED
    }

    @GET
    @Transactional
    @Operation(summary = "Open findings, the oldest first, or closed ones; of all customers or of one")
    public Findings findings(
            @QueryParam("status") @DefaultValue("OPEN") Which status,
            @QueryParam("customer") @Nullable CustomerId customer,
            @QueryParam("after") @Nullable String after) {
        boolean open = status == Which.OPEN;
        Slice<FindingLine> page = customer != null
                ? readFindings.ofCustomers(
                        List.of(readCustomer.customer(customer).id()), open, after, PAGE)
                : open ? readFindings.open(after, PAGE) : readFindings.closed(after, PAGE);
        return new Findings(page.rows(), page.next());
    }

    @GET
    @Path("{id}")
    @Transactional
    @Operation(summary = "A finding with its photos and actions")
    public FindingView finding(@PathParam("id") FindingId id) {
        return readFindings.finding(id);
    }

    @POST
    @Path("{finding}/notice")
    @Operation(summary = "Records that a notice went to the customer; the same again changes nothing")
    public FindingView notice(Notice notice) {
        actOnFinding.sendNotice(notice);
        return readFindings.finding(notice.finding());
    }

    @POST
    @Path("{finding}/upsell")
    @Operation(summary = "Notes work that could come of a finding; the same again changes nothing")
    public FindingView upsell(Upsell upsell) {
        actOnFinding.noteUpsell(upsell);
        return readFindings.finding(upsell.finding());
    }

    @POST
    @Path("{finding}/referral")
    @Operation(summary = "Records a referral to a licensed trade; the same again changes nothing")
    public FindingView refer(Referral referral) {
        actOnFinding.refer(referral);
        return readFindings.finding(referral.finding());
    }

    @POST
    @Path("{finding}/closing")
    @Operation(summary = "Closes a finding for good; the same again changes nothing")
    public FindingView close(Closing closing) {
        actOnFinding.close(closing);
        return readFindings.finding(closing.finding());
    }
}
