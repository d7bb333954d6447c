package eaveside.findings;

import eaveside.findings.internal.Photos;
import eaveside.kernel.PhotoId;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Takes in one photo of a visit. */
@Shared
public class StorePhoto {
    private final Photos photos;

    @Inject
    public StorePhoto(Photos photos) {
        this.photos = photos;
    }

    /**
     * Checks the picture by its content, turns it upright, drops its metadata (place and time of the shot, the phone's
     * name) and keeps it in two sizes. Sending the same bytes under the same id again changes nothing.
     *
     * <p>Refuses {@link FindingRefusal.PhotoTooLarge}, {@link FindingRefusal.UnsupportedPicture} (naming what the file
     * is), {@link FindingRefusal.TooManyPixels} (before any pixel is decoded), {@link FindingRefusal.DamagedPicture},
     * and {@link eaveside.kernel.KernelRefusal.IdTaken}.
     */
    @Transactional
    public Photo store(PhotoId id, VisitId visit, UserId by, byte[] file) {
        return photos.takeIn(id, visit, by, file);
    }
}
