package eaveside.findings.internal;

import eaveside.kernel.FindingId;
import eaveside.kernel.VisitId;
import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.hibernate.annotations.Immutable;

/** Shows a photo with a finding. Names the visit too, so that the database can tell that both are of the same one. */
@Entity
@Immutable
@Table(name = "finding_photo")
public class FindingPhotoRow {
    @EmbeddedId
    FindingPhotoKey key;

    @Column(name = "visit_id")
    VisitId visitId;

    int position;

    FindingPhotoRow() {}

    public FindingPhotoRow(FindingId finding, PhotoRow photo, int position) {
        this.key = new FindingPhotoKey(finding.value(), photo.id);
        this.visitId = photo.visitId;
        this.position = position;
    }
}
