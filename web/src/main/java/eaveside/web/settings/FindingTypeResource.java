package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.findings.FindingRefusal;
import eaveside.findings.FindingType;
import eaveside.findings.FindingTypeCode;
import eaveside.findings.ReadFindings;
import eaveside.findings.SaveFindingType;
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
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What technicians may report, which licensed trade mends it and what the customer is told meanwhile. */
@Path("/settings/finding-types")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class FindingTypeResource {
    private final ReadFindings readFindings;
    private final SaveFindingType saveFindingType;
    private final AuditLog auditLog;
    private final Viewer viewer;

    @Inject
    public FindingTypeResource(
            ReadFindings readFindings, SaveFindingType saveFindingType, AuditLog auditLog, Viewer viewer) {
        this.viewer = viewer;
        this.readFindings = readFindings;
        this.saveFindingType = saveFindingType;
        this.auditLog = auditLog;
    }

    public record TypesPage(List<FindingType> types) implements Page {
        @Override
        public String template() {
            return "settings/finding-types.jte";
        }
    }

    public record TypeFormPage(Fields fields, boolean isNew) implements Page {
        @Override
        public String template() {
            return "settings/finding-type-form.jte";
        }

        public Map<String, String> labels(View view) {
            Map<String, String> labels = new LinkedHashMap<>();
            labels.put("name", view.t("settings.type.name"));
            labels.put("trade", view.t("settings.type.trade"));
            labels.put("caution", view.t("settings.type.caution"));
            labels.put("active", view.t("settings.in-use"));
            return labels;
        }
    }

    @GET
    @Transactional
    public TypesPage types() {
        return new TypesPage(readFindings.types());
    }

    @GET
    @Path("new")
    public TypeFormPage fresh() {
        return new TypeFormPage(Fields.showing(Map.of("version", "0", "active", "yes")), true);
    }

    @GET
    @Path("{code}")
    @Transactional
    public TypeFormPage edit(@PathParam("code") String code) {
        FindingType type = readFindings.type(new FindingTypeCode(code));
        Map<String, String> values = values(type);
        values.put("version", String.valueOf(type.version()));
        return new TypeFormPage(Fields.showing(values), false);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        String code = fields.text("code");
        String name = fields.text("name");
        boolean saved = fields.run(
                () -> saveFindingType.save(new FindingType(
                        new FindingTypeCode(code),
                        name,
                        fields.optional("trade"),
                        fields.optional("caution"),
                        fields.ticked("active"),
                        version)),
                refusal -> refusal instanceof FindingRefusal.TypeChanged ? stored(code) : Optional.empty());
        if (!saved) {
            return Response.status(fields.status())
                    .entity(new TypeFormPage(fields, version == 0 && fields.stored() == null))
                    .build();
        }
        auditLog.done("finding-type.save", code);
        return Response.seeOther(URI.create("/settings/finding-types?done=settings.saved"))
                .build();
    }

    private Optional<Fields.Stored> stored(String code) {
        FindingType theirs = readFindings.type(new FindingTypeCode(code));
        return Optional.of(new Fields.Stored(theirs.version(), values(theirs)));
    }

    private static Map<String, String> values(FindingType type) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("code", type.code().value());
        values.put("name", type.name());
        values.put("trade", type.trade());
        values.put("caution", type.caution());
        if (type.active()) {
            values.put("active", "yes");
        }
        return values;
    }
}
