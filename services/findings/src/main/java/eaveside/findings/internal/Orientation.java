package eaveside.findings.internal;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.ExifIFD0Directory;
import eaveside.kernel.Decision;
import java.awt.geom.AffineTransform;
import java.io.ByteArrayInputStream;
import java.io.IOException;

/**
 * How a camera was held, by the Orientation tag (Exif 2.32, tag 274).
 *
 * @param  tag 1 for upright, to 8
 */
@Decision
record Orientation(int tag) {
    private static final Orientation UPRIGHT = new Orientation(1);

    /** As the file's Exif data say; upright where they say nothing or cannot be read: the picture itself may be good. */
    static Orientation of(byte[] file) {
        try {
            ExifIFD0Directory exif = ImageMetadataReader.readMetadata(new ByteArrayInputStream(file))
                    .getFirstDirectoryOfType(ExifIFD0Directory.class);
            Integer tag = exif == null ? null : exif.getInteger(ExifDirectoryBase.TAG_ORIENTATION);
            return tag != null && tag >= 1 && tag <= 8 ? new Orientation(tag) : UPRIGHT;
        } catch (ImageProcessingException | IOException | RuntimeException e) {
            return UPRIGHT;
        }
    }

    /** Whether width and height change places. */
    boolean turnsAside() {
        return tag >= 5;
    }

    /** What turns a stored picture of that size upright. */
    AffineTransform upright(int width, int height) {
        return switch (tag) {
            case 2 -> new AffineTransform(-1, 0, 0, 1, width, 0);
            case 3 -> new AffineTransform(-1, 0, 0, -1, width, height);
            case 4 -> new AffineTransform(1, 0, 0, -1, 0, height);
            case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
            case 6 -> new AffineTransform(0, 1, -1, 0, height, 0);
            case 7 -> new AffineTransform(0, -1, -1, 0, height, width);
            case 8 -> new AffineTransform(0, -1, 1, 0, 0, width);
            default -> new AffineTransform();
        };
    }
}
