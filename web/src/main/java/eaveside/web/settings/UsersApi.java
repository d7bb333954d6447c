package eaveside.web.settings;

import eaveside.access.AddUser;
import eaveside.access.ChangeUser;
import eaveside.access.DeactivateUser;
import eaveside.access.OfficeRights;
import eaveside.access.ReadUsers;
import eaveside.access.User;
import eaveside.kernel.UserId;
import eaveside.web.forms.Created;
import eaveside.web.forms.JsonResource;
import eaveside.web.security.Administers;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Those who sign in, for scripts of the owner; never a password. */
@Path("/api/users")
@Dependent
@RolesAllowed(Roles.OWNER)
@Tag(name = "Users")
@Administers
public class UsersApi extends JsonResource {
    @Inject
    ReadUsers readUsers;

    @Inject
    AddUser addUser;

    @Inject
    ChangeUser changeUser;

    @Inject
    DeactivateUser deactivateUser;

    @Inject
    OfficeRights officeRights;

    /** Everybody, the deactivated too. */
    public record Users(List<User> users) {}

    @GET
    @Path("office-rights")
    @Operation(summary = "What is opened to the office beyond its role")
    public OfficeRights.Rights officeRights() {
        return new OfficeRights.Rights(officeRights.readsBooks());
    }

    @PUT
    @Path("office-rights")
    @Operation(summary = "Opens the books to the office or closes them; the same again changes nothing")
    public OfficeRights.Rights setOfficeRights(OfficeRights.Rights rights) {
        officeRights.letReadBooks(rights.readsBooks(), viewer.id());
        return officeRights();
    }

    @GET
    @Operation(summary = "Users by name")
    public Users users() {
        return new Users(readUsers.all());
    }

    @GET
    @Path("{id}")
    @Operation(summary = "A user, with the version that a change names")
    public User user(@PathParam("id") UserId id) {
        return readUsers.user(id);
    }

    @POST
    @Operation(summary = "Adds a user; the same again changes nothing")
    public Created<User> add(AddUser.NewUser user) {
        return Created.at("/api/users/" + user.id(), addUser.add(user));
    }

    @PUT
    @Path("{id}")
    @Operation(summary = "Gives a user another name or role, or reactivates one; the same again changes nothing")
    public User change(User user) {
        return changeUser.change(user, viewer.id());
    }

    @POST
    @Path("{id}/deactivation")
    @Operation(summary = "Ends a user's sign-in, sessions and tokens at once; the same again changes nothing")
    public User deactivate(@PathParam("id") UserId id) {
        return deactivateUser.deactivate(id, viewer.id());
    }
}
