package eaveside.findings.internal;

import eaveside.findings.Photo;
import eaveside.findings.Picture;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.PhotoId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** A photo without its picture data. */
@Entity
@Immutable
@Table(name = "photo")
public class PhotoRow {
    @Id
    UUID id;

    @Column(name = "visit_id")
    VisitId visitId;

    int width;

    int height;

    /** SHA-256 of the file as it came in, to tell a retry from a clash. */
    @Column(name = "file_hash")
    String fileHash;

    @Column(name = "stored_by")
    UserId storedBy;

    @Column(name = "stored_at")
    Instant storedAt;

    PhotoRow() {}

    PhotoRow(PhotoId id, VisitId visit, Picture full, String fileHash, UserId by, Instant at) {
        this.id = id.value();
        this.visitId = visit;
        this.width = full.width();
        this.height = full.height();
        this.fileHash = fileHash;
        this.storedBy = by;
        this.storedAt = at;
    }

    public boolean isOf(VisitId visit) {
        return visitId.equals(visit);
    }

    void requireSame(VisitId visit, String otherHash) {
        if (!isOf(visit) || !fileHash.equals(otherHash)) {
            throw new KernelRefusal.IdTaken("photo", id.toString(), "of other content");
        }
    }

    public Photo toPhoto() {
        return new Photo(new PhotoId(id), visitId, width, height, storedBy, storedAt);
    }
}
