package eaveside.web.security;

import eaveside.access.AccessRefusal;
import eaveside.access.Role;
import eaveside.access.SignIn;
import eaveside.access.SignedIn;
import eaveside.web.Page;
import eaveside.web.forms.PageResource;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpSession;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import java.net.URI;

/** Signing in and out. */
@Path("/")
@Dependent
@PermitAll
public class SignInResource extends PageResource {
    @Inject
    SignIn signIn;

    @Context
    HttpServletRequest request;

    /** The form; what was typed as username stays, the password never does. */
    public record SignInPage(String username, String to, String error) implements Page {}

    @GET
    @Path("sign-in")
    public SignInPage form(@QueryParam("to") @DefaultValue("/") String to) {
        return new SignInPage("", to, "");
    }

    @POST
    @Path("sign-in")
    public Response signIn(
            @FormParam("username") @DefaultValue("") String username,
            @FormParam("password") @DefaultValue("") String password,
            @FormParam("to") @DefaultValue("/") String to) {
        try {
            begin(request, signIn.signIn(username, password.toCharArray(), request.getRemoteAddr()));
            return to(safe(to));
        } catch (AccessRefusal refusal) {
            return Response.status(RefusalMapper.statusOf(refusal))
                    .entity(new SignInPage(username, to, refusal.text()))
                    .build();
        }
    }

    /** A session of the person signed in, under a new id, so that one planted before is worth nothing after. */
    public static void begin(HttpServletRequest request, SignedIn signedIn) {
        HttpSession session = request.getSession(true);
        request.changeSessionId();
        session.setAttribute(Guard.SESSION_USER, signedIn.user().id().toString());
        session.setAttribute(Guard.SESSION_CREDENTIALS, signedIn.credentials());
    }

    @POST
    @Path("sign-out")
    public Response signOut() {
        HttpSession session = request.getSession(false);
        if (session != null) {
            session.invalidate();
        }
        return to("/sign-in");
    }

    /** Where each role begins. */
    @GET
    @RolesAllowed({Roles.OWNER, Roles.OFFICE, Roles.TECHNICIAN})
    public Response home() {
        return to(viewer.view().is(Role.TECHNICIAN) ? "/sheets" : "/worklist");
    }

    private static Response to(String path) {
        return Response.seeOther(URI.create(path)).build();
    }

    /** Only a path of our own: never a way to send people elsewhere. */
    private static String safe(String to) {
        return to.matches("/(?![/\\\\])[\\x21-\\x7e]{0,500}") ? to : "/";
    }
}
