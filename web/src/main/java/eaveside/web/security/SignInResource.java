package eaveside.web.security;

import eaveside.access.AccessRefusal;
import eaveside.access.Role;
import eaveside.access.SignIn;
import eaveside.access.SignedIn;
import eaveside.access.User;
import eaveside.web.Page;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpSession;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;

/** Signing in and out. */
@Path("/")
@Dependent
@PermitAll
@Produces(MediaType.TEXT_HTML)
public class SignInResource {
    private final SignIn signIn;
    private final Viewer viewer;

    @Context
    HttpServletRequest request;

    @Inject
    public SignInResource(SignIn signIn, Viewer viewer) {
        this.signIn = signIn;
        this.viewer = viewer;
    }

    /** The form; what was typed as username stays, the password never does. */
    public record SignInPage(String username, String to, String error) implements Page {
        @Override
        public String template() {
            return "sign-in.jte";
        }
    }

    @GET
    @Path("sign-in")
    public SignInPage form(@QueryParam("to") @DefaultValue("/") String to) {
        return new SignInPage("", to, "");
    }

    @POST
    @Path("sign-in")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response signIn(
            @FormParam("username") @DefaultValue("") String username,
            @FormParam("password") @DefaultValue("") String password,
            @FormParam("to") @DefaultValue("/") String to) {
        try {
            SignedIn signedIn = signIn.signIn(username, password.toCharArray(), request.getRemoteAddr());
            begin(request, signedIn);
            return Response.seeOther(URI.create(safe(to))).build();
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
        return Response.seeOther(URI.create("/sign-in")).build();
    }

    /** Where each role begins. */
    @GET
    @RolesAllowed({Roles.OWNER, Roles.OFFICE, Roles.TECHNICIAN})
    public Response home() {
        User user = viewer.user();
        boolean technician = user != null && user.role() == Role.TECHNICIAN;
        return Response.seeOther(URI.create(technician ? "/sheets" : "/worklist"))
                .build();
    }

    /** Only a path of our own: never a way to send people elsewhere. */
    private static String safe(String to) {
        return to.matches("/(?![/\\\\])[\\x21-\\x7e]{0,500}") ? to : "/";
    }
}
