package eaveside.web.security;

import eaveside.access.AccessRefusal;
import eaveside.access.EndSession;
import eaveside.access.Role;
import eaveside.access.SessionId;
import eaveside.access.SignIn;
import eaveside.access.SignedIn;
import eaveside.access.UsePasskey;
import eaveside.web.Page;
import eaveside.web.entrance.Credential;
import eaveside.web.forms.PageResource;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;

/** Signing in and out. */
@Path("/")
@Dependent
@PermitAll
public class SignInResource extends PageResource {
    @Inject
    SignIn signIn;

    @Inject
    UsePasskey usePasskey;

    @Inject
    NewSession newSession;

    @Inject
    EndSession endSession;

    @Context
    HttpServletRequest request;

    /**
     * The form; what was typed as username stays, the password never does.
     *
     * @param ended whether the browser was signed in before
     */
    public record SignInPage(String username, String to, String error, boolean ended) implements Page {
        SignInPage(String username, String to, String error) {
            this(username, to, error, false);
        }
    }

    @GET
    @Path("sign-in")
    public SignInPage form(
            @QueryParam("to") @DefaultValue("/") String to, @QueryParam("ended") @DefaultValue("") String ended) {
        return new SignInPage("", to, "", !ended.isEmpty());
    }

    @POST
    @Path("sign-in")
    public Response signIn(
            @FormParam("username") @DefaultValue("") String username,
            @FormParam("password") @DefaultValue("") String password,
            @FormParam("to") @DefaultValue("/") String to) {
        try {
            SignedIn signedIn = signIn.signIn(
                    username, password.toCharArray(), request.getRemoteAddr(), Credential.Kept.BROWSER.in(request));
            return newSession.withCookie(request, signedIn, to(Destination.ours(to)));
        } catch (AccessRefusal refusal) {
            return RefusalMapper.status(refusal)
                    .entity(new SignInPage(username, to, refusal.text()))
                    .build();
        }
    }

    @POST
    @Path("sign-in/passkey/begin")
    @Produces(MediaType.APPLICATION_JSON)
    public Response askForPasskey() {
        return PasskeyAnswers.answer(usePasskey.ask(Sites.of(request), null, request.getRemoteAddr()));
    }

    @POST
    @Path("sign-in/passkey")
    public Response signInByPasskey(
            @FormParam("question") @DefaultValue("") String question,
            @FormParam("credential") @DefaultValue("") String credential,
            @FormParam("to") @DefaultValue("/") String to) {
        try {
            SignedIn signedIn = usePasskey.show(Sites.of(request), question, credential, null, request.getRemoteAddr());
            return newSession.withCookie(request, signedIn, leadTo(to));
        } catch (AccessRefusal refusal) {
            return RefusalMapper.status(refusal)
                    .entity(new SignInPage("", to, refusal.said()))
                    .build();
        }
    }

    @POST
    @Path("sign-out")
    public Response signOut() {
        SessionId session = viewer.session();
        if (session != null) {
            endSession.end(session, viewer.id());
        }
        return Response.fromResponse(to("/sign-in"))
                .header(HttpHeaders.SET_COOKIE, Credential.Kept.SESSION.removed(request))
                .build();
    }

    /** Where each role begins. */
    @GET
    @RolesAllowed({Roles.OWNER, Roles.OFFICE, Roles.TECHNICIAN})
    public Response home() {
        return to(viewer.view().is(Role.TECHNICIAN) ? "/sheets" : "/worklist");
    }

    /** Where the form said to go afterwards. */
    static Response leadTo(String said) {
        return to(Destination.ours(said));
    }

    private static Response to(String path) {
        return Response.seeOther(URI.create(path)).build();
    }
}
