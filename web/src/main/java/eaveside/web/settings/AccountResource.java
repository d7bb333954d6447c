package eaveside.web.settings;

import eaveside.access.AccessRefusal;
import eaveside.access.ChangePassword;
import eaveside.access.Duty;
import eaveside.access.EndSession;
import eaveside.access.NewPassword;
import eaveside.access.ReadSecondFactors;
import eaveside.access.ReadSessions;
import eaveside.access.SecondFactors;
import eaveside.access.Session;
import eaveside.access.SessionId;
import eaveside.access.SetSpacing;
import eaveside.access.SignedIn;
import eaveside.kernel.KernelRefusal;
import eaveside.web.Page;
import eaveside.web.entrance.Credential;
import eaveside.web.forms.Fields;
import eaveside.web.forms.PageResource;
import eaveside.web.forms.Respond;
import eaveside.web.security.BeforeDuties;
import eaveside.web.security.Destination;
import eaveside.web.security.NewSession;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One's own password, what one shows beside it, and where one is signed in. */
@Path("/account")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE, Roles.TECHNICIAN})
@BeforeDuties({Duty.NEW_PASSWORD, Duty.SET_UP_SECOND_FACTOR})
public class AccountResource extends PageResource {
    @Inject
    ChangePassword changePassword;

    @Inject
    NewSession newSession;

    @Inject
    ReadSessions readSessions;

    @Inject
    ReadSecondFactors readSecondFactors;

    @Inject
    EndSession endSession;

    @Inject
    SetSpacing setSpacing;

    @Context
    HttpServletRequest request;

    /**
     * @param  here the session that looks at the list
     * @param  duty what is owed first
     * @param  to where to go on to once that is done
     * @param  sent which of the forms that ask for the password in the second step's section was sent; empty for none
     */
    public record AccountPage(
            Fields fields,
            List<Session> sessions,
            @Nullable SessionId here,
            @Nullable Duty duty,
            String to,
            SecondFactors factors,
            String sent)
            implements Page {
        public AccountPage {
            fields.labeled("settings", "account");
        }

        public String browser(Session session) {
            return BrowserName.of(session.agent());
        }
    }

    @GET
    public AccountPage account(@QueryParam("to") @DefaultValue("/account") String to) {
        return page(Fields.empty(), to);
    }

    private AccountPage page(Fields fields, String to) {
        return page(fields, to, "");
    }

    AccountPage page(Fields fields, String to, String sent) {
        return new AccountPage(
                fields,
                readSessions.of(viewer.id()),
                viewer.session(),
                viewer.duty(),
                to,
                readSecondFactors.of(viewer.id()),
                sent);
    }

    @POST
    @Path("spacing")
    public Response spacing(Fields fields) {
        setSpacing.set(viewer.id(), fields.typed("spacing").equals("comfortable"));
        return Respond.to("/account", "settings.spacing.saved");
    }

    @POST
    @Path("sessions/{session}/end")
    public Response end(@PathParam("session") String session) {
        endSession.end(SessionId.of(session), viewer.id());
        return Respond.to("/account", "settings.sessions.ended");
    }

    @POST
    @Path("sessions/end-others")
    public Response endOthers() {
        SessionId here = viewer.session();
        if (here != null) {
            endSession.endOthers(here, viewer.id());
        }
        return Respond.to("/account", "settings.sessions.others-ended");
    }

    @POST
    public Response change(Fields fields) {
        String old = fields.typed("old");
        String to = fields.typed("to");
        NewPassword wanted = fields.made("wanted", () -> new NewPassword(fields.typed("wanted")));
        if (!fields.typed("wanted").equals(fields.typed("again"))) {
            refused(fields, "again", "{field} differs from the new password. Type both again");
        }
        if (wanted != null && !fields.hasErrors()) {
            try {
                SignedIn signedIn = changePassword.change(
                        viewer.id(),
                        old.toCharArray(),
                        wanted,
                        request.getRemoteAddr(),
                        Credential.Kept.BROWSER.in(request),
                        viewer.session());
                return newSession.withCookie(request, signedIn, Respond.to(goingOn(to), "settings.account.changed"));
            } catch (AccessRefusal.WrongCredentials refusal) {
                refused(fields, "old", "{field} is wrong. Type it again");
            } catch (AccessRefusal.WeakPassword refusal) {
                refused(fields, "wanted", refusal.problems().getFirst().pattern());
            }
        }
        // Passwords are never sent back into the form.
        return Response.status(422).entity(page(fields.cleared(), to)).build();
    }

    /** Whoever came of their own will stays; the start page shows nothing of what was done. */
    private static String goingOn(String to) {
        String ours = Destination.ours(to);
        return ours.equals("/") ? "/account" : ours;
    }

    private static void refused(Fields fields, String field, String pattern) {
        fields.refused(new KernelRefusal.Unfit(field, pattern));
    }
}
