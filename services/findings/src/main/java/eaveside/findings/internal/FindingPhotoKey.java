package eaveside.findings.internal;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.util.UUID;

/** A photo of a finding. */
@Embeddable
record FindingPhotoKey(
        @Column(name = "finding_id") UUID findingId,
        @Column(name = "photo_id") UUID photoId) {}
