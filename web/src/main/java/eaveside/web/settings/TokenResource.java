package eaveside.web.settings;

import eaveside.access.IssueToken;
import eaveside.access.ReadTokens;
import eaveside.access.ReadUsers;
import eaveside.access.RevokeToken;
import eaveside.access.Role;
import eaveside.access.TokenId;
import eaveside.access.User;
import eaveside.kernel.UserId;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Untold;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;

/** Bearer tokens with which scripts act as a person. */
@Path("/settings/users/{user}/tokens")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For(Role.OWNER)
@Untold("its use cases tell the audit log")
public class TokenResource {
    private final ReadUsers readUsers;
    private final ReadTokens readTokens;
    private final UserPages pages;
    private final IssueToken issueToken;
    private final RevokeToken revokeToken;
    private final Viewer viewer;

    @Inject
    public TokenResource(
            ReadUsers readUsers,
            ReadTokens readTokens,
            UserPages pages,
            IssueToken issueToken,
            RevokeToken revokeToken,
            Viewer viewer) {
        this.readUsers = readUsers;
        this.readTokens = readTokens;
        this.pages = pages;
        this.issueToken = issueToken;
        this.revokeToken = revokeToken;
        this.viewer = viewer;
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response issue(@PathParam("user") String id, MultivaluedMap<String, String> form) {
        User user = readUsers.user(UserId.of(id));
        Fields fields = viewer.fields(form);
        TokenId token = new TokenId(fields.id("token"));
        String label = fields.text("label");
        int days = fields.integer("days", 1, IssueToken.LONGEST_DAYS);
        List<IssueToken.Issued> issued = new ArrayList<>(1);
        boolean went = fields.run(() ->
                issued.add(issueToken.issue(new IssueToken.NewToken(token, user.id(), label, days, viewer.id()))));
        return went
                ? Response.ok(new SecretPage(
                                "settings.secret.token",
                                label,
                                issued.getFirst().secret(),
                                "/settings/users/" + user.id()))
                        .build()
                : Response.status(fields.status())
                        .entity(pages.of(user.id(), fields))
                        .build();
    }

    @POST
    @Path("{token}/revoke")
    public Response revoke(@PathParam("user") String user, @PathParam("token") String token) {
        ReadTokens.Token known = readTokens.token(TokenId.of(token));
        revokeToken.revoke(known.id(), viewer.id());
        return Response.seeOther(URI.create("/settings/users/" + known.user() + "?done=settings.token-revoked"))
                .build();
    }
}
