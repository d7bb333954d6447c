package eaveside.web.settings;

import eaveside.access.AddPasskey;
import eaveside.access.AppKey;
import eaveside.access.Duty;
import eaveside.access.PasskeyId;
import eaveside.access.SessionId;
import eaveside.access.SetUpApp;
import eaveside.access.SignedIn;
import eaveside.kernel.KernelRefusal;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.PageResource;
import eaveside.web.forms.Respond;
import eaveside.web.security.BeforeDuties;
import eaveside.web.security.NewSession;
import eaveside.web.security.PasskeyAnswers;
import eaveside.web.security.Roles;
import eaveside.web.security.Sites;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.List;

/**
 * Setting up what one shows beside the password, and taking it away. Each asks for the password first: whoever finds a browser
 * open must not be able to make a way in of their own.
 */
@Path("/account")
@Dependent
@BeforeDuties(Duty.SET_UP_SECOND_FACTOR)
@RolesAllowed({Roles.OWNER, Roles.OFFICE, Roles.TECHNICIAN})
public class SecondFactorPages extends PageResource {
    private static final int GROUP = 4;

    @Inject
    OwnPassword ownPassword;

    @Inject
    SetUpApp setUpApp;

    @Inject
    AddPasskey addPasskey;

    @Inject
    NewSession newSession;

    @Inject
    AccountResource account;

    @Context
    HttpServletRequest request;

    public record AppSetUpPage(Fields fields, QrCode qr, String uri, String secret) implements Page {
        public AppSetUpPage {
            fields.labeled("settings", "app");
        }

        /** To be typed by hand. */
        public String spaced() {
            return secret.replaceAll("(.{" + GROUP + "})(?=.)", "$1 ");
        }
    }

    @POST
    @Path("app")
    public Response beginApp(Fields fields) {
        return confirmed("app", fields, () -> {
            setUpApp.begin(viewer.id(), session());
            return Respond.instead("/account/app");
        });
    }

    /** Where nothing is being set up, there is nothing to show. */
    @GET
    @Path("app")
    public Response app() {
        try {
            return Response.ok(app(Fields.empty())).build();
        } catch (KernelRefusal.NotFound nothing) {
            return Respond.instead("/account");
        }
    }

    private AppSetUpPage app(Fields fields) {
        AppKey key = setUpApp.pending(viewer.id(), session());
        return new AppSetUpPage(fields, QrCode.of(key.uri()), key.uri(), key.secret());
    }

    @POST
    @Path("app/code")
    public Response confirmApp(Fields fields) {
        List<SignedIn> strong = new ArrayList<>(1);
        return fields.run(() -> strong.add(setUpApp.confirm(viewer.id(), session(), fields.text("code"))))
                ? goOn(strong.getFirst(), "settings.app.set-up")
                : Response.status(422).entity(app(fields.cleared())).build();
    }

    @POST
    @Path("app/remove")
    public Response removeApp(Fields fields) {
        return confirmed("app", fields, () -> {
            setUpApp.remove(viewer.id());
            return Respond.to("/account", "settings.app.removed");
        });
    }

    /** For the page's script: what to ask the browser's authenticators. */
    @POST
    @Path("passkeys/begin")
    @Produces(MediaType.APPLICATION_JSON)
    public Response askForPasskey(Fields fields) {
        if (fields.typed("label").isBlank()) {
            throw new KernelRefusal.Unfit("label", "{field} is required"); // before the device has made one
        }
        ownPassword.require(fields, request);
        return PasskeyAnswers.answer(addPasskey.ask(viewer.id(), Sites.of(request)));
    }

    @POST
    @Path("passkeys")
    public Response add(Fields fields) {
        List<SignedIn> strong = new ArrayList<>(1);
        return fields.run(() -> strong.add(addPasskey.add(
                        viewer.id(),
                        Sites.of(request),
                        fields.typed("question"),
                        fields.text("label"),
                        fields.typed("credential"))))
                ? goOn(strong.getFirst(), "settings.passkeys.added")
                : again("passkey", fields);
    }

    @POST
    @Path("passkeys/{passkey}/remove")
    public Response remove(@PathParam("passkey") String passkey, Fields fields) {
        return confirmed(passkey, fields, () -> {
            addPasskey.remove(PasskeyId.of(passkey), viewer.id());
            return Respond.to("/account", "settings.passkeys.removed");
        });
    }

    /** What was set up has been shown just now: the session goes on as one of two factors, under a secret of its own. */
    private Response goOn(SignedIn strong, String done) {
        return newSession.withCookie(request, strong, Respond.to("/account", done));
    }

    private SessionId session() {
        SessionId session = viewer.session();
        if (session == null) {
            throw new KernelRefusal.NotFound("session of the script", viewer.id());
        }
        return session;
    }

    private interface Deed {
        Response done();
    }

    private Response confirmed(String form, Fields fields, Deed deed) {
        try {
            ownPassword.require(fields, request);
        } catch (KernelRefusal.Unfit refusal) {
            fields.refused(refusal);
            return again(form, fields);
        }
        return deed.done();
    }

    private Response again(String form, Fields fields) {
        return Response.status(422)
                .entity(account.page(fields.cleared(), "/account", form))
                .build();
    }
}
