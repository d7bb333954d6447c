package eaveside.findings.internal;

import eaveside.kernel.Decision;
import java.awt.geom.AffineTransform;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.plugins.tiff.BaselineTIFFTagSet;
import javax.imageio.plugins.tiff.TIFFDirectory;
import javax.imageio.plugins.tiff.TIFFField;
import javax.imageio.stream.MemoryCacheImageInputStream;

/**
 * How a camera was held, by the Orientation tag (Exif 2.32, tag 274).
 *
 * @param  tag 1 for upright, to 8
 */
@Decision
record Orientation(int tag) {
    private static final Orientation UPRIGHT = new Orientation(1);

    /** As the Exif block says; upright where it says nothing or cannot be read, since the picture itself may be good. */
    static Orientation of(byte[] exif) {
        if (exif.length == 0) {
            return UPRIGHT;
        }
        ImageReader reader = ImageIO.getImageReadersByFormatName("tiff").next();
        try (var input = new MemoryCacheImageInputStream(new ByteArrayInputStream(exif))) {
            reader.setInput(input);
            TIFFField field = TIFFDirectory.createFromMetadata(reader.getImageMetadata(0))
                    .getTIFFField(BaselineTIFFTagSet.TAG_ORIENTATION);
            int tag = field == null ? 1 : field.getAsInt(0);
            return tag >= 1 && tag <= 8 ? new Orientation(tag) : UPRIGHT;
        } catch (IOException | RuntimeException e) {
            return UPRIGHT;
        } finally {
            reader.dispose();
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
