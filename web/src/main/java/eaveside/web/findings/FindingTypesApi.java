package eaveside.web.findings;

import eaveside.access.Role;
import eaveside.findings.FindingType;
import eaveside.findings.FindingTypeCode;
import eaveside.findings.ReadFindings;
import eaveside.findings.SaveFindingType;
import eaveside.web.Json;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
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

/** Types of findings for scripts. */
@Path("/api/finding-types")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE})
@Tag(name = "Findings")
public class FindingTypesApi {
    private final ReadFindings readFindings;
    private final SaveFindingType saveFindingType;
    private final AuditLog auditLog;

    @Inject
    public FindingTypesApi(ReadFindings readFindings, SaveFindingType saveFindingType, AuditLog auditLog) {
        this.readFindings = readFindings;
        this.saveFindingType = saveFindingType;
        this.auditLog = auditLog;
    }

    /**
     * A type, as it is shown and sent back.
     *
     * @param  version what it was when it was read; 0 or absent for a new one
     */
    public record Type(
            @Nullable String code,
            @Nullable String name,
            @Nullable String trade,
            @Nullable String caution,
            @Nullable Boolean active,
            @Nullable Integer version) {
        static Type of(FindingType type) {
            return new Type(
                    type.code().value(), type.name(), type.trade(), type.caution(), type.active(), type.version());
        }
    }

    @GET
    @Transactional
    @Operation(summary = "Every type of finding, those that are no longer offered too")
    public List<Type> types() {
        return readFindings.types().stream().map(Type::of).toList();
    }

    @PUT
    @Path("{code}")
    @Operation(summary = "Enters a type of finding, changes it or offers it no longer; the same again changes nothing")
    public Type save(@PathParam("code") String code, @Nullable Type body) {
        Type asked = Json.required("body", body);
        FindingTypeCode type = new FindingTypeCode(code);
        saveFindingType.save(new FindingType(
                type,
                Json.required("name", asked.name()),
                asked.trade() == null ? "" : asked.trade(),
                asked.caution() == null ? "" : asked.caution(),
                asked.active() == null || asked.active(),
                asked.version() == null ? 0 : asked.version()));
        auditLog.done("finding-type.save", code);
        return Type.of(readFindings.type(type));
    }
}
