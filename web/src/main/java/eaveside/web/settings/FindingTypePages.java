package eaveside.web.settings;

import eaveside.findings.FindingType;
import eaveside.findings.FindingTypeCode;
import eaveside.findings.ReadFindings;
import eaveside.findings.SaveFindingType;
import eaveside.web.forms.EditPage;
import eaveside.web.forms.EditResource;
import eaveside.web.forms.Form;
import eaveside.web.forms.Listing;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Path;

/** What technicians may report, which licensed trade mends it and what the customer is told meanwhile. */
@Path("/settings/finding-types")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class FindingTypePages extends EditResource<FindingType, String> {
    @Inject
    ReadFindings readFindings;

    @Inject
    SaveFindingType saveFindingType;

    public FindingTypePages() {
        super(FindingType.class, "settings.finding-types", "/settings/finding-types");
    }

    @Override
    protected Listing<FindingType> list() {
        return rows(readFindings::types)
                .within("settings.title", "/settings")
                .about("intro")
                .searchedBy("name", "trade", "caution")
                .opening("name", type -> at(type.code()))
                .columns("trade", "caution", "active");
    }

    @Override
    protected FindingType stored(String code) {
        return readFindings.type(new FindingTypeCode(code));
    }

    @Override
    protected void save(FindingType type) {
        saveFindingType.save(type, viewer.id());
    }

    @Override
    protected EditPage page(Form<FindingType> form) {
        return super.page(form).fixing("code").areas("caution");
    }
}
