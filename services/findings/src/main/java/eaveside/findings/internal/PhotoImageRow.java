package eaveside.findings.internal;

import eaveside.findings.Photo;
import eaveside.findings.Picture;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** Picture data, in a table of its own so that no list ever loads it. */
@Entity
@Immutable
@Table(name = "photo_image")
class PhotoImageRow {
    @EmbeddedId
    PhotoImageKey key;

    int width;

    int height;

    byte[] content;

    PhotoImageRow() {}

    PhotoImageRow(UUID photo, Photo.Size size, Picture picture) {
        this.key = new PhotoImageKey(photo, size);
        this.width = picture.width();
        this.height = picture.height();
        this.content = picture.jpeg();
    }

    Picture toPicture() {
        return new Picture(content, width, height);
    }
}
