package eaveside.findings.internal;

import eaveside.access.RecordAudit;
import eaveside.findings.Photo;
import eaveside.findings.Picture;
import eaveside.kernel.Digest;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.PhotoId;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.util.List;

/** The stored photos. */
@Shared
public class Photos {
    private final EntityManager entities;
    private final FindingQueries queries;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public Photos(EntityManager entities, FindingQueries queries, RecordAudit audit, Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.audit = audit;
        this.clock = clock;
    }

    public Photo takeIn(PhotoId id, VisitId visit, UserId by, byte[] file) {
        // The slow part comes first, while the transaction holds no connection yet.
        PhotoIntake.Taken taken = PhotoIntake.take(file);
        String hash = hash(file);
        queries.takeTurnOf(id.toString());
        PhotoRow before = entities.find(PhotoRow.class, id.value());
        if (before != null) {
            before.requireSame(visit, hash);
            return before.toPhoto();
        }
        PhotoRow row = new PhotoRow(id, visit, taken.full(), hash, by, clock.instant());
        entities.persist(row);
        entities.flush();
        entities.persist(new PhotoImageRow(row.id, Photo.Size.FULL, taken.full()));
        entities.persist(new PhotoImageRow(row.id, Photo.Size.THUMBNAIL, taken.thumbnail()));
        audit.done("photo.store", by, id);
        return row.toPhoto();
    }

    public Photo photo(PhotoId id) {
        PhotoRow row = entities.find(PhotoRow.class, id.value());
        if (row == null) {
            throw new KernelRefusal.NotFound("photo", id);
        }
        return row.toPhoto();
    }

    public List<Photo> ofVisit(VisitId visit) {
        return queries.photosOfVisit(visit).stream().map(PhotoRow::toPhoto).toList();
    }

    public Picture picture(PhotoId id, Photo.Size size) {
        PhotoImageRow row = entities.find(PhotoImageRow.class, new PhotoImageKey(id.value(), size));
        if (row == null) {
            throw new KernelRefusal.NotFound("photo", id);
        }
        return row.toPicture();
    }

    private static String hash(byte[] file) {
        return Digest.sha256(file);
    }
}
