package eaveside.web.sheets;

import eaveside.findings.StorePhoto;
import eaveside.kernel.Ids;
import eaveside.kernel.PhotoId;
import eaveside.kernel.VisitId;
import eaveside.visits.ReadVisits;
import eaveside.visits.Visit;
import eaveside.web.forms.Respond;
import eaveside.web.forms.SentParts;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.EntityPart;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;

/** Photos of a visit, one at a time and before its sheet; the same photo again under its id changes nothing. */
@Path("/sheets/{visit: [0-9a-fA-F-]{36}}/photos")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE, Roles.TECHNICIAN})
public class SheetPhotosResource {
    @Inject
    ReadVisits readVisits;

    @Inject
    StorePhoto storePhoto;

    @Inject
    Viewer viewer;

    /** A photo that is stored. */
    public record Stored(String id) {}

    /**
     * From the page's script: the picture itself under the id that the phone made. Who was taken off the crew meanwhile may
     * still send it, since it was taken on the visit; reading it stays the crew's and the office's.
     */
    @POST
    @Path("{photo}")
    @Consumes(MediaType.WILDCARD)
    @Produces(MediaType.APPLICATION_JSON)
    public Stored store(@PathParam("visit") VisitId id, @PathParam("photo") PhotoId photo, byte[] picture) {
        Visit visit = readVisits.visit(id);
        return new Stored(
                storePhoto.store(photo, visit.id(), viewer.id(), picture).id().toString());
    }

    /** From the plain form; the sheet then offers the photo for ticking. */
    @POST
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @Produces(MediaType.TEXT_HTML)
    public Response store(@PathParam("visit") VisitId id, List<EntityPart> parts) {
        Visit visit = readVisits.visitFor(viewer.id(), id);
        SentParts sent = new SentParts(parts);
        byte[] picture = sent.bytes("photo");
        if (picture == null) {
            throw new WebRefusal.Unreadable("The form has no photo");
        }
        String known = sent.text("id");
        storePhoto.store(known == null ? new PhotoId(Ids.next()) : PhotoId.of(known), visit.id(), viewer.id(), picture);
        return Respond.to("/sheets/" + visit.id(), "sheets.photo-stored");
    }
}
