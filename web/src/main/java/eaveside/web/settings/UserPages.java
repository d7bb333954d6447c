package eaveside.web.settings;

import eaveside.access.AddUser;
import eaveside.access.ChangeUser;
import eaveside.access.DeactivateUser;
import eaveside.access.GeneratePassword;
import eaveside.access.IssueToken;
import eaveside.access.NewPassword;
import eaveside.access.NewToken;
import eaveside.access.OfficeRights;
import eaveside.access.ReadSecondFactors;
import eaveside.access.ReadTokens;
import eaveside.access.ReadUsers;
import eaveside.access.ResetPassword;
import eaveside.access.ResetSecondFactors;
import eaveside.access.RevokeToken;
import eaveside.access.Role;
import eaveside.access.SecondFactors;
import eaveside.access.Token;
import eaveside.access.TokenId;
import eaveside.access.TokenScope;
import eaveside.access.User;
import eaveside.kernel.Records;
import eaveside.kernel.UserId;
import eaveside.web.Page;
import eaveside.web.forms.EditPage;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.forms.Respond;
import eaveside.web.security.Administers;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Who signs in, and as what; and the bearer tokens with which scripts act as a user. */
@Path("/settings/users")
@Dependent
@RolesAllowed(Roles.OWNER)
@Administers
public class UserPages extends ListResource<User> {
    private static final int KNOWN_BY_NOBODY = -1;

    private static final String HERE = "/settings/users";
    private static final String USUAL_DAYS = "90";

    @Inject
    ReadUsers readUsers;

    @Inject
    ReadTokens readTokens;

    @Inject
    AddUser addUser;

    @Inject
    ChangeUser changeUser;

    @Inject
    DeactivateUser deactivateUser;

    @Inject
    ResetPassword resetPassword;

    @Inject
    ReadSecondFactors readSecondFactors;

    @Inject
    ResetSecondFactors resetSecondFactors;

    @Inject
    GeneratePassword generatePassword;

    @Inject
    IssueToken issueToken;

    @Inject
    OwnPassword ownPassword;

    @Context
    HttpServletRequest request;

    @Inject
    RevokeToken revokeToken;

    @Inject
    OfficeRights officeRights;

    @Inject
    Clock clock;

    public record NewUserPage(Form<AddUser.NewUser> form) implements Page {}

    /**
     * One user.
     *
     * @param  user     as stored
     * @param  password made up for the reset that this page offers; worth nothing until it is sent
     * @param  replaces the credentials that the reset replaces
     * @param  reset    what is wrong with a password that was sent
     */
    public record UserPage(
            User user,
            List<Token> tokens,
            SecondFactors factors,
            Instant now,
            String password,
            int replaces,
            Form<User> form,
            Form<NewToken> token,
            Fields reset)
            implements Page {
        /** Never the password. */
        @Override
        public String toString() {
            return "page of " + user.username();
        }
    }

    /**
     * A password or token in the only answer that ever shows it.
     *
     * @param  what  the key of the text that says what it is
     * @param  whose the name to sign in with, or what a token is for
     * @param  back  where the reader goes on to
     */
    public record SecretPage(String what, String whose, String secret, String back) implements Page {
        /** Never the secret. */
        @Override
        public String toString() {
            return what + " of " + whose;
        }
    }

    @Override
    protected Listing<User> list() {
        return Listing.whole("settings.users", HERE, query -> readUsers.all())
                .within("settings.title", "/settings")
                .searchedBy("name", "username")
                .opening("name", user -> at(user.id()))
                .columns("username", "role", "active")
                .action("new", HERE + "/new")
                .action("office-rights", HERE + "/office-rights");
    }

    private static String at(UserId id) {
        return HERE + "/" + id;
    }

    @GET
    @Path("office-rights")
    @Transactional
    public EditPage officeRights() {
        return rights(viewer.form(new OfficeRights.Rights(officeRights.readsBooks())));
    }

    /** Opens the books to the office, or closes them. */
    @POST
    @Path("office-rights")
    public Response officeRights(Form<OfficeRights.Rights> form) {
        return rights(form).saved(form.run(wanted -> officeRights.letReadBooks(wanted.readsBooks(), viewer.id())));
    }

    private static EditPage rights(Form<OfficeRights.Rights> form) {
        return EditPage.of(form, "settings.office-rights", HERE + "/office-rights");
    }

    @GET
    @Path("new")
    @Transactional
    public NewUserPage fresh() {
        return page(viewer.fresh(
                AddUser.NewUser.class,
                Map.of("password", generatePassword.generate(), "role", Role.TECHNICIAN.name())));
    }

    private static NewUserPage page(Form<AddUser.NewUser> form) {
        return new NewUserPage(form.labeled("settings.users"));
    }

    /** The password was made up for the form, so that sending it twice adds one user with one password. */
    @POST
    public Response add(Form<AddUser.NewUser> form) {
        Fields fields = form.fields();
        return form.run(addUser::add)
                ? password(readUsers.user(new UserId(fields.id("id"))), fields, HERE)
                : Respond.again(fields, page(form));
    }

    private static Response password(User user, Fields sent, String back) {
        return secret("settings.secret.password", user.username(), sent.typed("password"), back);
    }

    private static Response secret(String what, String whose, String secret, String back) {
        return Response.ok(new SecretPage(what, whose, secret, back)).build();
    }

    @GET
    @Path("{id}")
    @Transactional
    public UserPage user(@PathParam("id") UserId id) {
        return page(id, stored(id), newToken(), Fields.empty());
    }

    private Form<User> stored(UserId id) {
        return viewer.form(readUsers.user(id));
    }

    private Form<NewToken> newToken() {
        return viewer.fresh(NewToken.class, Map.of("days", USUAL_DAYS, "scope", TokenScope.READ.name()));
    }

    private UserPage page(UserId id, Form<User> form, Form<NewToken> token, Fields reset) {
        return new UserPage(
                readUsers.user(id),
                readTokens.of(id),
                readSecondFactors.of(id),
                clock.instant(),
                generatePassword.generate(),
                readUsers.credentials(id),
                form.labeled("settings.users"),
                token.labeled("settings.tokens"),
                reset.labeled("settings.users", "user"));
    }

    @POST
    @Path("{id}")
    public Response change(@PathParam("id") UserId id, Form<User> form) {
        User now = readUsers.user(id);
        form.labeled("settings.users").given("username", now.username()).given("active", now.active());
        return answer(form.run(user -> changeUser.change(user, viewer.id())), id, form, "settings.users.saved");
    }

    @POST
    @Path("{id}/reactivate")
    public Response reactivate(@PathParam("id") UserId id) {
        Form<User> form = stored(id);
        User back = Records.with(readUsers.user(id), "active", true);
        return answer(
                form.fields().run(() -> changeUser.change(back, viewer.id())), id, form, "settings.users.reactivated");
    }

    @POST
    @Path("{id}/deactivate")
    public Response deactivate(@PathParam("id") UserId id) {
        Form<User> form = stored(id);
        return answer(
                form.fields().run(() -> deactivateUser.deactivate(id, viewer.id())),
                id,
                form,
                "settings.users.deactivated");
    }

    @POST
    @Path("{id}/second-factors/reset")
    public Response resetSecondFactors(@PathParam("id") UserId id, Fields fields) {
        Form<User> form = stored(id);
        return answer(
                form.fields().run(() -> resetSecondFactors.reset(id, replaces(fields), viewer.id())),
                id,
                form,
                "settings.second.reset.done");
    }

    /** A form that does not say what it replaces replaces nothing. */
    private static int replaces(Fields fields) {
        String typed = fields.typed("replaces");
        return typed.matches("\\d{1,9}") ? Integer.parseInt(typed) : KNOWN_BY_NOBODY;
    }

    private Response answer(boolean done, UserId id, Form<User> form, String said) {
        return done
                ? Respond.to(at(id), said)
                : Respond.again(form.fields(), page(id, form, newToken(), Fields.empty()));
    }

    @POST
    @Path("{id}/password")
    public Response reset(@PathParam("id") UserId id, Fields fields) {
        User user = readUsers.user(id);
        return fields.run(() -> resetPassword.reset(
                        id, new NewPassword(fields.typed("password")), replaces(fields), viewer.id()))
                ? password(user, fields, at(id))
                : Respond.again(fields, page(id, stored(id), newToken(), fields.cleared()));
    }

    /** Asks for the password of whoever issues it: a token outlives the browser that was open, and the token that asked for it. */
    @POST
    @Path("{user}/tokens")
    public Response issue(@PathParam("user") UserId user, Form<NewToken> form) {
        List<String> secrets = new ArrayList<>(1);
        return form.run(token -> {
                    ownPassword.require(form.fields(), request);
                    secrets.add(issueToken.issue(token).secret());
                })
                ? secret("settings.secret.token", form.fields().typed("label"), secrets.getFirst(), at(user))
                : Respond.again(form.fields(), page(user, stored(user), form, Fields.empty()));
    }

    @POST
    @Path("{user}/tokens/{token}/revoke")
    public Response revoke(@PathParam("token") String token) {
        Token known = readTokens.token(TokenId.of(token));
        revokeToken.revoke(known.id(), viewer.id());
        return Respond.to(at(known.user()), "settings.tokens.revoked");
    }
}
