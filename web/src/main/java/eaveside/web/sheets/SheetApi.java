package eaveside.web.sheets;

import eaveside.access.Role;
import eaveside.kernel.DocumentId;
import eaveside.kernel.VisitId;
import eaveside.ledger.Books;
import eaveside.ledger.Posted;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.visits.ReadSheets;
import eaveside.visits.ReverseJobSheet;
import eaveside.visits.SignOffVisit;
import eaveside.visits.SignOffVisit.SignedOff;
import eaveside.web.Json;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** A visit's sheet for scripts. */
@Path("/api/visits/{visit}/sheet")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE, Role.TECHNICIAN})
@Tag(name = "Visits")
public class SheetApi {
    private final SignOffVisit signOffVisit;
    private final ReadSheets readSheets;
    private final ReverseJobSheet reverseJobSheet;
    private final Books books;
    private final Viewer viewer;

    @Inject
    public SheetApi(
            SignOffVisit signOffVisit,
            ReadSheets readSheets,
            ReverseJobSheet reverseJobSheet,
            Books books,
            Viewer viewer) {
        this.signOffVisit = signOffVisit;
        this.readSheets = readSheets;
        this.reverseJobSheet = reverseJobSheet;
        this.books = books;
        this.viewer = viewer;
    }

    /** An alkaline soap on modules whose manufacturer forbids alkali. */
    public record Warning(String soap, String surface, String manufacturer) {}

    /** The posted document. */
    public record Done(String id, long number, String postingDate, List<Warning> warnings) {
        static Done of(Posted posted, List<Warning> warnings) {
            return new Done(
                    posted.id().toString(),
                    posted.number(),
                    posted.postingDate().toString(),
                    warnings);
        }
    }

    /**
     * A reversal.
     *
     * @param  id    of the reversing document
     * @param  sheet to be reversed
     */
    public record NewReversal(
            @Nullable String id,
            @Nullable String sheet,
            @Nullable String reason) {}

    @PUT
    @Operation(summary = "Signs a visit off by its sheet; the same sheet again changes nothing")
    public Done signOff(@PathParam("visit") String visit, SheetJson.@Nullable Sheet body) {
        VisitId id = VisitId.of(visit);
        SignedOff signed = signOffVisit.signOff(Json.required("body", body).read(id, viewer.id()));
        return Done.of(
                signed.posted(),
                signed.warnings().stream()
                        .map(w -> new Warning(
                                w.soap().toString(),
                                w.surface().toString(),
                                w.manufacturer().value()))
                        .toList());
    }

    @POST
    @Path("reversal")
    @For({Role.OWNER, Role.OFFICE})
    @Operation(summary = "Reverses a wrong sheet in full, once, before its visit is billed")
    public Done reverse(@PathParam("visit") String visit, @Nullable NewReversal body) {
        NewReversal reversal = Json.required("body", body);
        VisitId id = VisitId.of(visit);
        DocumentId sheet = DocumentId.of(Json.required("sheet", reversal.sheet()));
        if (!readSheets.sheet(sheet).visit().equals(id)) {
            throw new WebRefusal.NoSuchPage();
        }
        Posted posted = reverseJobSheet.reverse(new Reversal(
                DocumentId.of(Json.required("id", reversal.id())),
                sheet,
                null,
                Json.required("reason", reversal.reason()),
                viewer.id()));
        return Done.of(posted, List.of());
    }
}
