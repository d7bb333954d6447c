package eaveside.web.settings;

import eaveside.access.AddUser;
import eaveside.access.ChangeUser;
import eaveside.access.DeactivateUser;
import eaveside.access.GeneratePassword;
import eaveside.access.NewPassword;
import eaveside.access.OfficeRights;
import eaveside.access.ReadUsers;
import eaveside.access.ResetPassword;
import eaveside.access.Role;
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
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Map;

/** Who signs in, and as what. */
@Path("/settings/users")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed(Roles.OWNER)
public class UserPages extends ListResource<User> {
    @Inject
    ReadUsers readUsers;

    @Inject
    UserForms forms;

    @Inject
    AddUser addUser;

    @Inject
    ChangeUser changeUser;

    @Inject
    DeactivateUser deactivateUser;

    @Inject
    ResetPassword resetPassword;

    @Inject
    GeneratePassword generatePassword;

    @Inject
    OfficeRights officeRights;

    public record NewUserForm(Form<AddUser.NewUser> form) implements Page {
        @Override
        public String template() {
            return "settings/user-new.jte";
        }
    }

    @Override
    protected Listing<User> list() {
        return Listing.whole(
                        "settings.users",
                        "/settings/users",
                        query -> readUsers.all().stream()
                                .filter(user -> query.finds(user.name(), user.username()))
                                .toList())
                .within("settings.title", "/settings")
                .searched()
                .opening("name", user -> "/settings/users/" + user.id())
                .columns("username", "role", "active")
                .action("new", "/settings/users/new")
                .action("office-rights", "/settings/users/office-rights");
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
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response officeRights(Form<OfficeRights.Rights> form) {
        return rights(form).saved(form.run(wanted -> officeRights.letReadBooks(wanted.readsBooks(), viewer.id())));
    }

    private static EditPage rights(Form<OfficeRights.Rights> form) {
        return EditPage.of(form, "settings.office-rights", "/settings/users/office-rights");
    }

    @GET
    @Path("new")
    @Transactional
    public NewUserForm fresh() {
        return page(viewer.form(
                AddUser.NewUser.class,
                Map.of(
                        "id", UserId.next().toString(),
                        "password", generatePassword.generate(),
                        "role", Role.TECHNICIAN.name())));
    }

    private static NewUserForm page(Form<AddUser.NewUser> form) {
        return new NewUserForm(form.labeled("settings.users"));
    }

    /** The password was made up for the form, so that sending it twice adds one user with one password. */
    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response add(Form<AddUser.NewUser> form) {
        Fields fields = form.fields();
        return form.run(user -> addUser.add(user))
                ? shown(readUsers.user(new UserId(fields.id("id"))), fields.typed("password"), "/settings/users")
                : Respond.again(fields, page(form));
    }

    private static Response shown(User user, String password, String back) {
        return Response.ok(new SecretPage("settings.secret.password", user.username(), password, back))
                .build();
    }

    @GET
    @Path("{id}")
    @Transactional
    public UserForms.UserPage user(@PathParam("id") UserId id) {
        return forms.of(id);
    }

    @POST
    @Path("{id}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response change(@PathParam("id") UserId id, Form<User> form) {
        User now = readUsers.user(id);
        form.labeled("settings.users").given("username", now.username()).given("active", now.active());
        return answer(form.run(user -> changeUser.change(user, viewer.id())), id, form);
    }

    @POST
    @Path("{id}/reactivate")
    public Response reactivate(@PathParam("id") UserId id) {
        Form<User> form = forms.stored(id);
        User back = Records.with(readUsers.user(id), "active", true);
        return answer(form.fields().run(() -> changeUser.change(back, viewer.id())), id, form);
    }

    @POST
    @Path("{id}/deactivate")
    public Response deactivate(@PathParam("id") UserId id) {
        Form<User> form = forms.stored(id);
        return answer(form.fields().run(() -> deactivateUser.deactivate(id, viewer.id())), id, form);
    }

    private Response answer(boolean done, UserId id, Form<User> form) {
        return done
                ? Respond.to("/settings/users/" + id, "settings.users.saved")
                : Respond.again(form.fields(), forms.withUser(id, form));
    }

    @POST
    @Path("{id}/password")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response reset(@PathParam("id") UserId id, Fields fields) {
        User user = readUsers.user(id);
        String password = fields.typed("password");
        return fields.run(() -> resetPassword.reset(id, new NewPassword(password), viewer.id()))
                ? shown(user, password, "/settings/users/" + id)
                : Respond.again(fields, forms.withReset(id, fields.cleared()));
    }
}
