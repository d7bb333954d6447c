package eaveside.web.findings;

import eaveside.access.Role;
import eaveside.findings.FindingKind;
import eaveside.findings.KindCode;
import eaveside.findings.ReadFindings;
import eaveside.findings.SaveFindingKind;
import eaveside.web.Json;
import eaveside.web.security.For;
import eaveside.web.security.Trail;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Kinds of findings for scripts. */
@Path("/api/finding-kinds")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE})
@Tag(name = "Findings")
public class FindingKindsApi {
    private final ReadFindings readFindings;
    private final SaveFindingKind saveFindingKind;
    private final Trail trail;

    @Inject
    public FindingKindsApi(ReadFindings readFindings, SaveFindingKind saveFindingKind, Trail trail) {
        this.readFindings = readFindings;
        this.saveFindingKind = saveFindingKind;
        this.trail = trail;
    }

    /**
     * A kind, as it is shown and sent back.
     *
     * @param version what it was when it was read; 0 or absent for a new one
     */
    public record Kind(
            @Nullable String code,
            @Nullable String name,
            @Nullable String trade,
            @Nullable String caution,
            @Nullable Boolean active,
            @Nullable Integer version) {
        static Kind of(FindingKind kind) {
            return new Kind(
                    kind.code().value(), kind.name(), kind.trade(), kind.caution(), kind.active(), kind.version());
        }
    }

    @GET
    @Transactional
    @Operation(summary = "Every kind of finding, those that are no longer offered too")
    public List<Kind> kinds() {
        return readFindings.kinds().stream().map(Kind::of).toList();
    }

    @PUT
    @Path("{code}")
    @Operation(summary = "Enters a kind of finding, changes it or offers it no longer; the same again changes nothing")
    public Kind save(@PathParam("code") String code, @Nullable Kind body) {
        Kind asked = Json.required("body", body);
        KindCode kind = new KindCode(code);
        saveFindingKind.save(new FindingKind(
                kind,
                Json.required("name", asked.name()),
                asked.trade() == null ? "" : asked.trade(),
                asked.caution() == null ? "" : asked.caution(),
                asked.active() == null || asked.active(),
                asked.version() == null ? 0 : asked.version()));
        trail.done("finding-kind.save", code);
        return Kind.of(readFindings.kind(kind));
    }
}
