package eaveside.web.settings;

import eaveside.catalog.Catalog;
import eaveside.catalog.SaveServiceLine;
import eaveside.catalog.ServiceLine;
import eaveside.kernel.ServiceLineId;
import eaveside.web.forms.EditResource;
import eaveside.web.forms.Listing;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Path;

/** Service lines: the parts of the business whose margin the owner reads. */
@Path("/settings/service-lines")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class ServiceLinePages extends EditResource<ServiceLine, ServiceLineId> {
    @Inject
    Catalog catalog;

    @Inject
    SaveServiceLine saveServiceLine;

    public ServiceLinePages() {
        super(ServiceLine.class, "settings.service-lines", "/settings/service-lines");
    }

    @Override
    protected Listing<ServiceLine> list() {
        return rows(catalog::lines)
                .within("settings.title", "/settings")
                .searchedBy("code", "name")
                .opening("code", line -> at(line.id()))
                .columns("name", "active");
    }

    @Override
    protected ServiceLine stored(ServiceLineId id) {
        return catalog.line(id);
    }

    @Override
    protected void save(ServiceLine line) {
        saveServiceLine.save(line, viewer.id());
    }
}
