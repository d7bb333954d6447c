package eaveside.web.settings;

import eaveside.access.AccessRefusal;
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
import eaveside.access.Username;
import eaveside.kernel.UserId;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Untold;
import eaveside.web.security.Viewer;
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
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Who may come in, and as what. */
@Path("/settings/users")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For(Role.OWNER)
@Untold("its use cases tell the audit log")
public class UserResource {
    private final ReadUsers readUsers;
    private final UserPages pages;
    private final AddUser addUser;
    private final ChangeUser changeUser;
    private final DeactivateUser deactivateUser;
    private final ResetPassword resetPassword;
    private final GeneratePassword generatePassword;
    private final OfficeRights officeRights;
    private final Viewer viewer;

    @Inject
    public UserResource(
            ReadUsers readUsers,
            UserPages pages,
            AddUser addUser,
            ChangeUser changeUser,
            DeactivateUser deactivateUser,
            ResetPassword resetPassword,
            GeneratePassword generatePassword,
            OfficeRights officeRights,
            Viewer viewer) {
        this.readUsers = readUsers;
        this.pages = pages;
        this.addUser = addUser;
        this.changeUser = changeUser;
        this.deactivateUser = deactivateUser;
        this.resetPassword = resetPassword;
        this.generatePassword = generatePassword;
        this.officeRights = officeRights;
        this.viewer = viewer;
    }

    /** @param  officeReadsBooks what the owner has opened to the office */
    public record UsersPage(List<User> users, boolean officeReadsBooks) implements Page {
        @Override
        public String template() {
            return "settings/users.jte";
        }
    }

    public record NewUserPage(Map<String, String> roles, Fields fields) implements Page {
        @Override
        public String template() {
            return "settings/user-new.jte";
        }
    }

    @GET
    @Transactional
    public UsersPage users() {
        return new UsersPage(readUsers.all(), officeRights.readsBooks());
    }

    /** Opens the books to the office, or closes them. */
    @POST
    @Path("office-rights")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response officeRights(MultivaluedMap<String, String> form) {
        officeRights.letReadBooks(viewer.fields(form).ticked("readsBooks"), viewer.id());
        return Response.seeOther(URI.create("/settings/users?done=settings.office-rights.saved"))
                .build();
    }

    @GET
    @Path("new")
    public NewUserPage fresh() {
        return newPage(Fields.showing(Map.of(
                "id",
                UserId.next().toString(),
                "password",
                generatePassword.generate(),
                "role",
                Role.TECHNICIAN.name())));
    }

    private NewUserPage newPage(Fields fields) {
        return new NewUserPage(UserPages.roles(viewer.view()), fields);
    }

    /** The password was made up for the form, so that sending it twice adds one person with one password. */
    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response add(MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        UserId id = new UserId(fields.id("id"));
        String name = fields.text("name");
        String username = fields.text("username");
        Role role = fields.choice("role", Role.class);
        String password = fields.text("password");
        boolean added = fields.run(() -> addUser.add(new AddUser.NewUser(
                id,
                new Username(username),
                name,
                role == null ? Role.TECHNICIAN : role,
                new NewPassword(password),
                viewer.id())));
        return added
                ? Response.ok(new SecretPage(
                                "settings.secret.password", readUsers.user(id).username(), password, "/settings/users"))
                        .build()
                : Response.status(fields.status()).entity(newPage(fields)).build();
    }

    @GET
    @Path("{id}")
    @Transactional
    public UserPages.UserPage user(@PathParam("id") String id) {
        return pages.of(UserId.of(id));
    }

    @POST
    @Path("{id}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response change(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        ReadUsers.Versioned user = readUsers.versioned(UserId.of(id));
        Fields fields = viewer.fields(form);
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        String name = fields.text("name");
        Role role = fields.choice("role", Role.class);
        return changed(
                user.user().id(), fields, version, name, role, user.user().active());
    }

    @POST
    @Path("{id}/reactivate")
    public Response reactivate(@PathParam("id") String id) {
        ReadUsers.Versioned user = readUsers.versioned(UserId.of(id));
        User who = user.user();
        return changed(who.id(), Fields.empty(), user.version(), who.name(), who.role(), true);
    }

    private Response changed(UserId id, Fields fields, int version, String name, @Nullable Role role, boolean active) {
        boolean changed = fields.run(
                () -> changeUser.change(new ChangeUser.Change(
                        id, version, name, role == null ? Role.TECHNICIAN : role, active, viewer.id())),
                refusal -> refusal instanceof AccessRefusal.ChangedMeanwhile
                        ? Optional.of(stored(readUsers.versioned(id)))
                        : Optional.empty());
        return answer(changed, id, fields);
    }

    private static Fields.Stored stored(ReadUsers.Versioned theirs) {
        return new Fields.Stored(
                theirs.version(),
                Map.of(
                        "name",
                        theirs.user().name(),
                        "role",
                        theirs.user().role().name()));
    }

    @POST
    @Path("{id}/deactivate")
    public Response deactivate(@PathParam("id") String id) {
        UserId user = readUsers.user(UserId.of(id)).id();
        Fields fields = Fields.empty();
        boolean done = fields.run(() -> deactivateUser.deactivate(user, viewer.id()));
        return answer(done, user, fields);
    }

    private Response answer(boolean done, UserId id, Fields fields) {
        return done
                ? Response.seeOther(URI.create("/settings/users/" + id + "?done=settings.saved"))
                        .build()
                : Response.status(fields.status()).entity(pages.of(id, fields)).build();
    }

    @POST
    @Path("{id}/password")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response reset(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        User user = readUsers.user(UserId.of(id));
        Fields fields = viewer.fields(form);
        String password = fields.text("password");
        boolean reset = fields.run(() -> resetPassword.reset(user.id(), new NewPassword(password), viewer.id()));
        return reset
                ? Response.ok(new SecretPage(
                                "settings.secret.password", user.username(), password, "/settings/users/" + user.id()))
                        .build()
                : Response.status(fields.status())
                        .entity(pages.of(user.id(), fields))
                        .build();
    }
}
