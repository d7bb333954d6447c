package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.ledger.Company;
import eaveside.ledger.UpdateCompany;
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
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The company's name, address and measures for scripts; the owner's alone. */
@Path("/api/settings/company")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For(Role.OWNER)
@Tag(name = "Settings")
public class CompanyApi {
    private final UpdateCompany updateCompany;
    private final AuditLog auditLog;

    @Inject
    public CompanyApi(UpdateCompany updateCompany, AuditLog auditLog) {
        this.updateCompany = updateCompany;
        this.auditLog = auditLog;
    }

    /** @param  country ISO 3166-1 alpha-2 */
    public record PostalAddress(
            @Nullable String street,
            @Nullable String city,
            @Nullable String region,
            @Nullable String zipCode,
            @Nullable String country) {
        static PostalAddress of(Company.Address a) {
            return new PostalAddress(a.street(), a.city(), a.region(), a.zipCode(), a.country());
        }

        Company.Address read() {
            return new Company.Address(
                    Json.optional(street),
                    Json.optional(city),
                    Json.optional(region),
                    Json.optional(zipCode),
                    Json.required("address.country", country));
        }
    }

    /**
     * The company.
     *
     * @param  currency  ISO 4217; never changes, and need not be sent
     * @param  zone      an IANA zone
     * @param  measures  US or METRIC
     * @param  booksFrom first day of the first month of the books; never changes, and need not be sent
     * @param  version   as read
     */
    public record Body(
            @Nullable String name,
            @Nullable PostalAddress address,
            @Nullable String email,
            @Nullable String phone,
            @Nullable String taxNumber,
            @Nullable String currency,
            @Nullable String zone,
            @Nullable String measures,
            @Nullable String booksFrom,
            @Nullable Integer version) {
        static Body of(UpdateCompany.Versioned versioned) {
            Company company = versioned.company();
            return new Body(
                    company.name(),
                    PostalAddress.of(company.address()),
                    company.email(),
                    company.phone(),
                    company.taxNumber(),
                    company.currency(),
                    company.zone(),
                    company.measures().name(),
                    company.booksFrom().toString(),
                    versioned.version());
        }

        /** @param  now where the parts that never change come from, unless they are sent */
        Company read(Company now) {
            return new Company(
                    Json.required("name", name),
                    Json.required("address", address).read(),
                    Json.optional(email),
                    Json.optional(phone),
                    Json.optional(taxNumber),
                    currency == null ? now.currency() : currency,
                    Json.required("zone", zone),
                    Json.choice("measures", Company.Measures.class, measures),
                    booksFrom == null ? now.booksFrom() : Json.date("booksFrom", booksFrom));
        }
    }

    @GET
    @Transactional
    @Operation(summary = "The company with the version that a change must name")
    public Body company() {
        return Body.of(updateCompany.current());
    }

    @PUT
    @Operation(summary = "Changes the company; what is stored already is a retry. Currency and first month stay")
    public Body save(@Nullable Body body) {
        Body sent = Json.required("body", body);
        int version = Json.required("version", sent.version());
        Company wanted = sent.read(updateCompany.current().company());
        Body saved = Body.of(updateCompany.update(wanted, version));
        auditLog.done("company.change", wanted.name());
        return saved;
    }
}
