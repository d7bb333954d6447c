package eaveside.web.settings;

import eaveside.access.AddUser;
import eaveside.access.ChangeUser;
import eaveside.access.DeactivateUser;
import eaveside.access.NewPassword;
import eaveside.access.OfficeRights;
import eaveside.access.ReadUsers;
import eaveside.access.Role;
import eaveside.access.User;
import eaveside.access.Username;
import eaveside.kernel.UserId;
import eaveside.web.Json;
import eaveside.web.security.For;
import eaveside.web.security.Untold;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The people who may come in, for scripts of the owner. */
@Path("/api/users")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For(Role.OWNER)
@Tag(name = "Users")
@Untold("its use cases tell the audit log")
public class UsersApi {
    private final ReadUsers readUsers;
    private final AddUser addUser;
    private final ChangeUser changeUser;
    private final DeactivateUser deactivateUser;
    private final OfficeRights officeRights;
    private final Viewer viewer;

    @Inject
    public UsersApi(
            ReadUsers readUsers,
            AddUser addUser,
            ChangeUser changeUser,
            DeactivateUser deactivateUser,
            OfficeRights officeRights,
            Viewer viewer) {
        this.readUsers = readUsers;
        this.addUser = addUser;
        this.changeUser = changeUser;
        this.deactivateUser = deactivateUser;
        this.officeRights = officeRights;
        this.viewer = viewer;
    }

    /** A person; never the password. */
    public record Person(
            String id,
            String username,
            String name,
            String role,
            boolean active,
            @Nullable Integer version) {
        static Person of(User user, @Nullable Integer version) {
            return new Person(
                    user.id().toString(),
                    user.username(),
                    user.name(),
                    user.role().name(),
                    user.active(),
                    version);
        }
    }

    /** @param  role OWNER, OFFICE or TECHNICIAN */
    public record NewPerson(
            @Nullable String id,
            @Nullable String username,
            @Nullable String name,
            @Nullable String role,
            @Nullable String password) {
        /** Never the password. */
        @Override
        public String toString() {
            return "new person " + id;
        }
    }

    /** @param  version as read */
    public record Change(
            @Nullable String name,
            @Nullable String role,
            @Nullable Boolean active,
            @Nullable Integer version) {}

    /** @param  readsBooks whether the office reads accounts, entries and journals, wages among them */
    public record Rights(@Nullable Boolean readsBooks) {}

    @GET
    @Path("office-rights")
    @Transactional
    @Operation(summary = "What is opened to the office beyond its role")
    public Rights officeRights() {
        return new Rights(officeRights.readsBooks());
    }

    @PUT
    @Path("office-rights")
    @Operation(summary = "Opens the books to the office or closes them; the same again changes nothing")
    public Rights setOfficeRights(@Nullable Rights body) {
        officeRights.letReadBooks(
                Json.required("readsBooks", Json.required("body", body).readsBooks()), viewer.id());
        return officeRights();
    }

    @GET
    @Transactional
    @Operation(summary = "Everybody by name, those shut out too")
    public List<Person> users() {
        return readUsers.all().stream().map(user -> Person.of(user, null)).toList();
    }

    @GET
    @Path("{id}")
    @Transactional
    @Operation(summary = "A person, with the version that a change names")
    public Person user(@PathParam("id") String id) {
        return person(UserId.of(id));
    }

    private Person person(UserId id) {
        ReadUsers.Versioned user = readUsers.versioned(id);
        return Person.of(user.user(), user.version());
    }

    @POST
    @Operation(summary = "Lets a person in; the same again changes nothing")
    public Person add(@Nullable NewPerson body) {
        NewPerson sent = Json.required("body", body);
        UserId id = UserId.of(Json.required("id", sent.id()));
        addUser.add(new AddUser.NewUser(
                id,
                new Username(Json.required("username", sent.username())),
                Json.required("name", sent.name()),
                role(sent.role()),
                new NewPassword(Json.required("password", sent.password())),
                viewer.id()));
        return person(id);
    }

    @PUT
    @Path("{id}")
    @Operation(summary = "Gives a person another name or role, or lets one in again")
    public Person change(@PathParam("id") String id, @Nullable Change body) {
        UserId user = readUsers.user(UserId.of(id)).id();
        Change sent = Json.required("body", body);
        changeUser.change(new ChangeUser.Change(
                user,
                Json.required("version", sent.version()),
                Json.required("name", sent.name()),
                role(sent.role()),
                sent.active() == null || sent.active(),
                viewer.id()));
        return person(user);
    }

    @POST
    @Path("{id}/deactivation")
    @Operation(summary = "Shuts a person out at once; the same again changes nothing")
    public Person deactivate(@PathParam("id") String id) {
        UserId user = readUsers.user(UserId.of(id)).id();
        deactivateUser.deactivate(user, viewer.id());
        return person(user);
    }

    private static Role role(@Nullable String name) {
        String there = Json.required("role", name);
        return Stream.of(Role.values())
                .filter(role -> role.name().equals(there))
                .findFirst()
                .orElseThrow(() -> new WebRefusal.Unreadable("'role' is none of " + List.of(Role.values())));
    }
}
