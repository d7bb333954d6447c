package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.ledger.Company;
import eaveside.ledger.LedgerRefusal;
import eaveside.ledger.UpdateCompany;
import eaveside.web.Page;
import eaveside.web.View;
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
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** The company's name, address and measures. */
@Path("/settings/company")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For(Role.OWNER)
public class CompanyResource {
    private final UpdateCompany updateCompany;
    private final AuditLog auditLog;
    private final Viewer viewer;

    @Inject
    public CompanyResource(UpdateCompany updateCompany, AuditLog auditLog, Viewer viewer) {
        this.viewer = viewer;
        this.updateCompany = updateCompany;
        this.auditLog = auditLog;
    }

    /** @param  now the company as it stands, for what cannot be changed */
    public record CompanyPage(Company now, Fields fields) implements Page {
        @Override
        public String template() {
            return "settings/company.jte";
        }

        /** Every field in the order of the form. */
        public Map<String, String> labels(View view) {
            Map<String, String> labels = new LinkedHashMap<>();
            for (String name : values(now).keySet()) {
                labels.put(name, view.t("settings.company." + name));
            }
            return labels;
        }
    }

    @GET
    @Transactional
    public CompanyPage company() {
        UpdateCompany.Versioned current = updateCompany.current();
        Map<String, String> values = values(current.company());
        values.put("version", String.valueOf(current.version()));
        return new CompanyPage(current.company(), Fields.showing(values));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(MultivaluedMap<String, String> form) {
        Company now = updateCompany.current().company();
        Fields fields = viewer.fields(form);
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        String name = fields.text("name");
        String country = fields.text("country");
        String zone = fields.text("zone");
        Company.Measures measures = fields.choice("measures", Company.Measures.class);
        boolean saved = fields.run(
                () -> updateCompany.update(
                        new Company(
                                name,
                                new Company.Address(
                                        fields.optional("street"),
                                        fields.optional("city"),
                                        fields.optional("region"),
                                        fields.optional("zipCode"),
                                        country),
                                fields.optional("email"),
                                fields.optional("phone"),
                                fields.optional("taxNumber"),
                                now.currency(),
                                zone,
                                measures == null ? now.measures() : measures,
                                now.booksFrom()),
                        version),
                refusal -> refusal instanceof LedgerRefusal.CompanyChangedMeanwhile other
                        ? Optional.of(new Fields.Stored(
                                other.stored().version(), values(other.stored().company())))
                        : Optional.empty());
        if (!saved) {
            return Response.status(fields.status())
                    .entity(new CompanyPage(now, fields))
                    .build();
        }
        auditLog.done("company.change", name);
        return Response.seeOther(URI.create("/settings/company?done=settings.saved"))
                .build();
    }

    private static Map<String, String> values(Company company) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("name", company.name());
        values.put("street", company.address().street());
        values.put("city", company.address().city());
        values.put("region", company.address().region());
        values.put("zipCode", company.address().zipCode());
        values.put("country", company.address().country());
        values.put("email", company.email());
        values.put("phone", company.phone());
        values.put("taxNumber", company.taxNumber());
        values.put("zone", company.zone());
        values.put("measures", company.measures().name());
        return values;
    }
}
