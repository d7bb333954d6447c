package eaveside.web.findings;

import eaveside.findings.FindingType;
import eaveside.findings.FindingTypeCode;
import eaveside.findings.ReadFindings;
import eaveside.findings.SaveFindingType;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
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

/** Types of findings for scripts. */
@Path("/api/finding-types")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Tag(name = "Findings")
public class FindingTypesApi {
    @Inject
    ReadFindings readFindings;

    @Inject
    SaveFindingType saveFindingType;

    @Inject
    Viewer viewer;

    /** Every type, those that are no longer offered too. */
    public record FindingTypes(List<FindingType> findingTypes) {}

    @GET
    @Transactional
    @Operation(summary = "Types of findings by name")
    public FindingTypes types() {
        return new FindingTypes(readFindings.types());
    }

    @GET
    @Path("{code}")
    @Transactional
    @Operation(summary = "A type of finding")
    public FindingType type(@PathParam("code") String code) {
        return readFindings.type(new FindingTypeCode(code));
    }

    @PUT
    @Path("{code}")
    @Operation(summary = "Adds a type of finding, or changes the version named; the same again changes nothing")
    public FindingType save(FindingType type) {
        return saveFindingType.save(type, viewer.id());
    }
}
