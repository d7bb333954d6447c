package eaveside.findings;

import eaveside.findings.internal.Photos;
import eaveside.kernel.PhotoId;
import eaveside.kernel.Shared;
import eaveside.kernel.VisitId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;

/** Shows photos. Only {@link #picture} reads picture data. */
@Shared
public class ReadPhoto {
    private final Photos photos;

    @Inject
    public ReadPhoto(Photos photos) {
        this.photos = photos;
    }

    /** Refuses an unknown id with {@link eaveside.kernel.KernelRefusal.NotFound}. */
    @Transactional
    public Photo photo(PhotoId id) {
        return photos.photo(id);
    }

    /** The photos of a visit in the order they came in, shown by a finding or not. */
    @Transactional
    public List<Photo> ofVisit(VisitId visit) {
        return photos.ofVisit(visit);
    }

    /** Refuses an unknown id with {@link eaveside.kernel.KernelRefusal.NotFound}. */
    @Transactional
    public Picture picture(PhotoId id, Photo.Size size) {
        return photos.picture(id, size);
    }
}
