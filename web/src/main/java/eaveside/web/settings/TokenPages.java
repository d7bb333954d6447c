package eaveside.web.settings;

import eaveside.access.IssueToken;
import eaveside.access.NewToken;
import eaveside.access.ReadTokens;
import eaveside.access.RevokeToken;
import eaveside.access.Token;
import eaveside.access.TokenId;
import eaveside.kernel.UserId;
import eaveside.web.forms.Form;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.List;

/** Bearer tokens with which scripts act as a user. */
@Path("/settings/users/{user}/tokens")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed(Roles.OWNER)
public class TokenPages {
    @Inject
    ReadTokens readTokens;

    @Inject
    UserForms forms;

    @Inject
    IssueToken issueToken;

    @Inject
    RevokeToken revokeToken;

    @Inject
    Viewer viewer;

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response issue(@PathParam("user") UserId user, Form<NewToken> form) {
        List<String> secrets = new ArrayList<>(1);
        return form.run(token -> secrets.add(issueToken.issue(token).secret()))
                ? Response.ok(new SecretPage(
                                "settings.secret.token",
                                form.fields().typed("label"),
                                secrets.getFirst(),
                                "/settings/users/" + user))
                        .build()
                : Respond.again(form.fields(), forms.withToken(user, form));
    }

    @POST
    @Path("{token}/revoke")
    public Response revoke(@PathParam("token") String token) {
        Token known = readTokens.token(TokenId.of(token));
        revokeToken.revoke(known.id(), viewer.id());
        return Respond.to("/settings/users/" + known.user(), "settings.tokens.revoked");
    }
}
