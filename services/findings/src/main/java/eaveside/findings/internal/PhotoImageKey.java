package eaveside.findings.internal;

import eaveside.findings.Photo;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.util.UUID;

/** A photo in one of its sizes. */
@Embeddable
record PhotoImageKey(
        @Column(name = "photo_id") UUID photoId,
        @Enumerated(EnumType.STRING) @Column(name = "size") Photo.Size size) {}
