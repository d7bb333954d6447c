package eaveside.findings;

import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.PhotoId;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Something noticed on a visit, as the technician wrote it down.
 *
 * @param  surface      where, unless it belongs to no surface (an overhanging tree)
 * @param  customerNotified whether the customer was told on site
 * @param  photos       stored before, of the same visit, in the order to show them; at most {@value #MOST_PHOTOS}
 */
public record NewFinding(
        FindingId id,
        FindingTypeCode type,
        SeverityCode severity,
        VisitId visit,
        CustomerId customer,
        SiteId site,
        @Nullable SurfaceId surface,
        String note,
        boolean customerNotified,
        List<PhotoId> photos,
        UserId by) {
    /** Photos that one finding shows at most. */
    public static final int MOST_PHOTOS = 12;

    public NewFinding {
        note = Texts.optional("note", note, 2000);
        photos = photos.stream().distinct().toList();
        if (photos.size() > MOST_PHOTOS) {
            throw new KernelRefusal.TooMany("photos", photos.size(), MOST_PHOTOS);
        }
    }
}
