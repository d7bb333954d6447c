package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.findings.FindingKind;
import eaveside.findings.FindingRefusal;
import eaveside.findings.KindCode;
import eaveside.findings.ReadFindings;
import eaveside.findings.SaveFindingKind;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Trail;
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
@Path("/settings/kinds")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class FindingKindResource {
    private final ReadFindings readFindings;
    private final SaveFindingKind saveFindingKind;
    private final Trail trail;
    private final Viewer viewer;

    @Inject
    public FindingKindResource(ReadFindings readFindings, SaveFindingKind saveFindingKind, Trail trail, Viewer viewer) {
        this.viewer = viewer;
        this.readFindings = readFindings;
        this.saveFindingKind = saveFindingKind;
        this.trail = trail;
    }

    public record KindsPage(List<FindingKind> kinds) implements Page {
        @Override
        public String template() {
            return "settings/kinds.jte";
        }
    }

    public record KindFormPage(Fields fields, boolean isNew) implements Page {
        @Override
        public String template() {
            return "settings/kind-form.jte";
        }

        public Map<String, String> labels(View view) {
            Map<String, String> labels = new LinkedHashMap<>();
            labels.put("name", view.t("settings.kind.name"));
            labels.put("trade", view.t("settings.kind.trade"));
            labels.put("caution", view.t("settings.kind.caution"));
            labels.put("active", view.t("settings.in-use"));
            return labels;
        }
    }

    @GET
    @Transactional
    public KindsPage kinds() {
        return new KindsPage(readFindings.kinds());
    }

    @GET
    @Path("new")
    public KindFormPage fresh() {
        return new KindFormPage(Fields.showing(Map.of("version", "0", "active", "yes")), true);
    }

    @GET
    @Path("{code}")
    @Transactional
    public KindFormPage edit(@PathParam("code") String code) {
        FindingKind kind = readFindings.kind(new KindCode(code));
        Map<String, String> values = values(kind);
        values.put("version", String.valueOf(kind.version()));
        return new KindFormPage(Fields.showing(values), false);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        String code = fields.text("code");
        String name = fields.text("name");
        boolean saved = fields.run(
                () -> saveFindingKind.save(new FindingKind(
                        new KindCode(code),
                        name,
                        fields.optional("trade"),
                        fields.optional("caution"),
                        fields.ticked("active"),
                        version)),
                refusal -> refusal instanceof FindingRefusal.KindChanged ? stored(code) : Optional.empty());
        if (!saved) {
            return Response.status(fields.status())
                    .entity(new KindFormPage(fields, version == 0 && fields.stored() == null))
                    .build();
        }
        trail.done("finding-kind.save", code);
        return Response.seeOther(URI.create("/settings/kinds?done=settings.saved"))
                .build();
    }

    private Optional<Fields.Stored> stored(String code) {
        FindingKind theirs = readFindings.kind(new KindCode(code));
        return Optional.of(new Fields.Stored(theirs.version(), values(theirs)));
    }

    private static Map<String, String> values(FindingKind kind) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("code", kind.code().value());
        values.put("name", kind.name());
        values.put("trade", kind.trade());
        values.put("caution", kind.caution());
        if (kind.active()) {
            values.put("active", "yes");
        }
        return values;
    }
}
