package eaveside.web.settings;

import eaveside.access.AccessRefusal;
import eaveside.access.ChangePassword;
import eaveside.access.NewPassword;
import eaveside.access.SignedIn;
import eaveside.kernel.KernelRefusal;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.PageResource;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.SignInResource;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;

/** One's own password. */
@Path("/account")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE, Roles.TECHNICIAN})
public class AccountResource extends PageResource {
    @Inject
    ChangePassword changePassword;

    @Context
    HttpServletRequest request;

    public record AccountPage(Fields fields) implements Page {
        public AccountPage {
            fields.labeled("settings", "account");
        }
    }

    @GET
    public AccountPage account() {
        return new AccountPage(Fields.empty());
    }

    @POST
    public Response change(Fields fields) {
        String old = fields.text("old");
        NewPassword wanted = fields.made("wanted", () -> new NewPassword(fields.text("wanted")));
        if (!fields.typed("wanted").equals(fields.typed("again"))) {
            refused(fields, "again", "{field} differs from the new password. Type both again");
        }
        if (wanted != null && !fields.hasErrors()) {
            try {
                SignedIn signedIn =
                        changePassword.change(viewer.id(), old.toCharArray(), wanted, request.getRemoteAddr());
                SignInResource.begin(request, signedIn);
                return Respond.to("/account", "settings.account.changed");
            } catch (AccessRefusal.WrongCredentials refusal) {
                refused(fields, "old", "{field} is wrong. Type it again");
            } catch (AccessRefusal.WeakPassword refusal) {
                refused(fields, "wanted", refusal.problems().getFirst().pattern());
            }
        }
        // Passwords are never sent back into the form.
        return Response.status(422).entity(new AccountPage(fields.cleared())).build();
    }

    private static void refused(Fields fields, String field, String pattern) {
        fields.refused(new KernelRefusal.Unfit(field, pattern));
    }
}
