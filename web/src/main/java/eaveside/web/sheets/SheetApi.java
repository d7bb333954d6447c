package eaveside.web.sheets;

import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.VisitId;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Posted;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.visits.JobSheet;
import eaveside.visits.ReadSheets;
import eaveside.visits.ReverseJobSheet;
import eaveside.visits.SignOffVisit;
import eaveside.visits.SignOffVisit.SignedOff;
import eaveside.visits.SoapWarning;
import eaveside.web.forms.Created;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** A visit's job sheet for scripts. */
@Path("/api/visits/{visit}/sheet")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Visits")
@RolesAllowed({Roles.OWNER, Roles.OFFICE, Roles.TECHNICIAN})
public class SheetApi {
    @Inject
    SignOffVisit signOffVisit;

    @Inject
    ReadSheets readSheets;

    @Inject
    ReverseJobSheet reverseJobSheet;

    /**
     * The posted sheet.
     *
     * @param  warnings of alkaline soap on panels whose manufacturer forbids it
     */
    public record Signed(
            DocumentId id, DocumentType type, long number, LocalDate postingDate, List<SoapWarning> warnings) {}

    @PUT
    @KeptWhereRefused
    @Operation(
            summary =
                    "Signs a visit off by its job sheet; the same sheet again changes nothing; a refused one stays readable by the office")
    public Signed signOff(JobSheet sheet) {
        SignedOff signed = signOffVisit.signOff(sheet);
        Posted posted = signed.posted();
        return new Signed(posted.id(), posted.type(), posted.number(), posted.postingDate(), signed.warnings());
    }

    @POST
    @Path("{original}/reversal")
    @RolesAllowed({Roles.OWNER, Roles.OFFICE})
    @Operation(summary = "Reverses a wrong job sheet in full, once, before its visit is billed")
    public Created<Posted> reverse(@PathParam("visit") VisitId visit, Reversal reversal) {
        if (!readSheets.sheet(reversal.original()).visit().equals(visit)) {
            throw new KernelRefusal.NotFound("job sheet", reversal.original());
        }
        return Created.document(reverseJobSheet.reverse(reversal));
    }
}
