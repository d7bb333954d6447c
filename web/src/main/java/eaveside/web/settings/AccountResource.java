package eaveside.web.settings;

import eaveside.access.AccessRefusal;
import eaveside.access.ChangePassword;
import eaveside.access.NewPassword;
import eaveside.access.Role;
import eaveside.access.SignedIn;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.SignInResource;
import eaveside.web.security.Untold;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;

/** One's own password. */
@Path("/account")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE, Role.TECHNICIAN})
@Untold("its use cases tell the audit log")
public class AccountResource {
    private final ChangePassword changePassword;
    private final Viewer viewer;

    @Context
    HttpServletRequest request;

    @Inject
    public AccountResource(ChangePassword changePassword, Viewer viewer) {
        this.changePassword = changePassword;
        this.viewer = viewer;
    }

    public record AccountPage(Fields fields) implements Page {
        @Override
        public String template() {
            return "settings/account.jte";
        }
    }

    @GET
    public AccountPage account() {
        return new AccountPage(Fields.empty());
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response change(MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        String old = fields.text("old");
        NewPassword wanted = fields.made("wanted", () -> new NewPassword(fields.text("wanted")));
        if (!fields.typed("wanted").equals(fields.typed("again"))) {
            fields.wrong("again", "settings.account.unlike");
        }
        if (wanted != null && !fields.hasErrors()) {
            try {
                SignedIn signedIn =
                        changePassword.change(viewer.id(), old.toCharArray(), wanted, request.getRemoteAddr());
                SignInResource.begin(request, signedIn);
                return Response.seeOther(URI.create("/account?done=settings.password-changed"))
                        .build();
            } catch (AccessRefusal.WrongCredentials refusal) {
                fields.wrong("old", "settings.account.wrong");
            } catch (AccessRefusal.WeakPassword refusal) {
                fields.made("wanted", () -> {
                    throw refusal;
                });
            }
        }
        // Passwords are never sent back into the form.
        return Response.status(422).entity(new AccountPage(fields.cleared())).build();
    }
}
