package eaveside.findings;

import eaveside.findings.internal.Photos;
import eaveside.kernel.PhotoId;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Removes a photo that its technician took back before signing off. */
@Dependent
public class DiscardPhoto {
    private final Photos photos;

    @Inject
    public DiscardPhoto(Photos photos) {
        this.photos = photos;
    }

    /** Refuses a photo that a finding shows; one that is gone already is a retry. */
    @Transactional
    public void discard(PhotoId id, UserId by) {
        photos.discard(id, by);
    }
}
