package eaveside.web.security;

import eaveside.access.AccessRefusal;
import eaveside.access.Duty;
import eaveside.access.EnterCode;
import eaveside.access.ReadSecondFactors;
import eaveside.access.SecondFactors;
import eaveside.access.SignedIn;
import eaveside.access.UsePasskey;
import eaveside.web.Page;
import eaveside.web.entrance.Credential;
import eaveside.web.forms.PageResource;
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
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;

/** What somebody shows beside the password, where they have set up something. */
@Path("/sign-in/second")
@Dependent
@BeforeDuties(Duty.SECOND_FACTOR)
@RolesAllowed({Roles.OWNER, Roles.OFFICE, Roles.TECHNICIAN})
public class SecondStepResource extends PageResource {
    @Inject
    ReadSecondFactors readSecondFactors;

    @Inject
    EnterCode enterCode;

    @Inject
    UsePasskey usePasskey;

    @Inject
    NewSession newSession;

    @Context
    HttpServletRequest request;

    /** The form; what was typed as code is not shown again. */
    public record SecondStepPage(SecondFactors factors, String to, String error) implements Page {}

    @GET
    public SecondStepPage form(@QueryParam("to") @DefaultValue("/") String to) {
        return page(to, "");
    }

    private SecondStepPage page(String to, String error) {
        return new SecondStepPage(readSecondFactors.of(viewer.id()), to, error);
    }

    @POST
    public Response code(
            @FormParam("code") @DefaultValue("") String code, @FormParam("to") @DefaultValue("/") String to) {
        try {
            return goOn(
                    enterCode.enter(viewer.id(), code, request.getRemoteAddr(), Credential.Kept.BROWSER.in(request)),
                    to);
        } catch (AccessRefusal refusal) {
            return again(refusal, to);
        }
    }

    @POST
    @Path("passkey/begin")
    @Produces(MediaType.APPLICATION_JSON)
    public Response ask() {
        return PasskeyAnswers.answer(usePasskey.ask(Sites.of(request), viewer.id(), request.getRemoteAddr()));
    }

    @POST
    @Path("passkey")
    public Response passkey(
            @FormParam("question") @DefaultValue("") String question,
            @FormParam("credential") @DefaultValue("") String credential,
            @FormParam("to") @DefaultValue("/") String to) {
        try {
            return goOn(
                    usePasskey.show(Sites.of(request), question, credential, viewer.id(), request.getRemoteAddr()), to);
        } catch (AccessRefusal refusal) {
            return again(refusal, to);
        }
    }

    /** A session of its own: what was known of the first half is worth nothing any more. */
    private Response goOn(SignedIn signedIn, String to) {
        return newSession.withCookie(request, signedIn, SignInResource.leadTo(to));
    }

    private Response again(AccessRefusal refusal, String to) {
        return RefusalMapper.status(refusal).entity(page(to, refusal.said())).build();
    }
}
