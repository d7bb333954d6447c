package eaveside.web.sheets;

import eaveside.findings.Photo;
import eaveside.findings.Picture;
import eaveside.findings.ReadPhoto;
import eaveside.kernel.PhotoId;
import eaveside.visits.ReadVisits;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;

/** The pictures of visits, for the office and the visit's own crew. */
@Path("/photos/{photo}")
@Dependent
@Produces(Picture.MEDIA_TYPE)
@RolesAllowed({Roles.OWNER, Roles.OFFICE, Roles.TECHNICIAN})
public class PhotoResource {
    @Inject
    ReadPhoto readPhoto;

    @Inject
    ReadVisits readVisits;

    @Inject
    Viewer viewer;

    @GET
    @Transactional
    public byte[] photo(@PathParam("photo") PhotoId photo) {
        return picture(photo, Photo.Size.FULL);
    }

    @GET
    @Path("thumbnail")
    @Transactional
    public byte[] thumbnail(@PathParam("photo") PhotoId photo) {
        return picture(photo, Photo.Size.THUMBNAIL);
    }

    private byte[] picture(PhotoId id, Photo.Size size) {
        readVisits.visitFor(viewer.id(), readPhoto.photo(id).visit());
        return readPhoto.picture(id, size).jpeg();
    }
}
