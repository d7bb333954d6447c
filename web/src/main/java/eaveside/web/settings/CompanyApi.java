package eaveside.web.settings;

import eaveside.ledger.Company;
import eaveside.ledger.UpdateCompany;
import eaveside.web.forms.JsonReading;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.json.JsonObject;
import jakarta.json.JsonObjectBuilder;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The company's name, address and measures for scripts; the owner's alone. */
@Path("/api/settings/company")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Roles.OWNER)
@Tag(name = "Settings")
public class CompanyApi {
    @Inject
    UpdateCompany updateCompany;

    @Inject
    Viewer viewer;

    @GET
    @Transactional
    @Operation(summary = "The company with the version that a change must name")
    public Company company() {
        return updateCompany.current();
    }

    @PUT
    @Operation(
            summary = "Changes the company; what is stored already is a retry",
            description = "Currency and first month never change, and need not be sent.")
    @RequestBody(
            content =
                    @Content(
                            schema =
                                    @Schema(
                                            implementation = Company.class,
                                            requiredProperties = {"name", "address", "zone", "measures"})))
    public Company save(JsonObject body) {
        Company now = updateCompany.current();
        JsonObjectBuilder whole = jakarta.json.Json.createObjectBuilder()
                .add("currency", now.currency())
                .add("booksFrom", now.booksFrom().toString());
        body.forEach(whole::add);
        return updateCompany.update(JsonReading.read(Company.class, whole.build(), Map.of()), viewer.id());
    }
}
