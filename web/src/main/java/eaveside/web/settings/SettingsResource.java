package eaveside.web.settings;

import eaveside.web.Page;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;

/** The way to every setting; the office sees what it may change. */
@Path("/settings")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class SettingsResource {

    public record SettingsPage() implements Page {
        @Override
        public String template() {
            return "settings/settings.jte";
        }
    }

    @GET
    public SettingsPage settings() {
        return new SettingsPage();
    }
}
